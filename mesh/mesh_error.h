#pragma once

#include <stdexcept>

namespace gapstrain::mesh {

// Every fault of meshing, in one sentence.
struct MeshError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

// @throw MeshError naming the part ("tube") and its size ("perimeter") unless that is positive and finite.
void require_positive(const char* part, double value, const char* name);

}  // namespace gapstrain::mesh
