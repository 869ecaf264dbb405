#include "solver/host/side_by_side.h"

namespace gapstrain::solver {

void side_by_side(std::size_t count, const std::function<void(std::size_t)>& job) {
  for (std::size_t k = 0; k < count; ++k) job(k);
}

}  // namespace gapstrain::solver
