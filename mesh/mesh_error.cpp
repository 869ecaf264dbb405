#include "mesh/mesh_error.h"

#include <fmt/format.h>
#include <cmath>

namespace gapstrain::mesh {

void require_positive(const char* part, double value, const char* name) {
  if (!(std::isfinite(value) && value > 0.0))
    throw MeshError(fmt::format("The {}'s {} has to be positive and finite, not {}.", part, name, value));
}

}  // namespace gapstrain::mesh
