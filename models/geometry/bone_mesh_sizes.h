// How fine the bone's mesh is, for who makes it and for who asks whether there is room in it.
#pragma once

#include "models/geometry/bone_shape.h"
#include "models/parts/construct.h"

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

// Edges along the bone, and along the cut, mm.
inline double bone_edge(const BoneShape& shape, const MeshDensity& mesh) {
  return shape.perimeter() / (24.0 * mesh.refinement);
}
inline double cut_edge(const BoneShape& shape, const MeshDensity& mesh) {
  return shape.perimeter() / (36.0 * mesh.refinement);
}

// Round a shaft; as few as the mesher takes at least.
inline int ring_elements(const MeshDensity& mesh) {
  return std::max(8, 4 * static_cast<int>(std::lround(4.0 * mesh.refinement)));
}

}  // namespace gapstrain::models
