// A fracture's cut through the bone. Plain numbers in mm, in construct axes (see bone_shape.h).
#pragma once

#include "models/geometry/bone_shape.h"
#include "models/parts/fracture.h"

#include <Eigen/Core>

#include <cstddef>
#include <vector>

namespace gapstrain::models {

// Which fragment a place on the bone's axis lies in, by the middles of the gaps; 0 is the most proximal.
std::size_t fragment_at(const std::vector<Fracture>& fractures, Length x);

// The fracture's cut as a plane through the bone's axis with the gap on both sides of it.
class CutThroughBone {
 public:
  CutThroughBone(const Fracture& fracture, const BoneShape& bone);

  // Of a place from the nearer edge, square to the cut; negative inside the gap.
  double edge_distance(const Eigen::Vector3d& place) const;
  bool is_distal(const Eigen::Vector3d& place) const { return beyond(place) > 0.0; }

  // Along the bone, from the most proximal to the most distal point of either edge: the gap, and what an oblique
  // cut reaches over the bone's outer surface.
  double length() const { return length_; }

 private:
  double beyond(const Eigen::Vector3d& place) const;  // the cut's middle, along the axis

  Eigen::Vector3d centre_, square_;  // `square_` grows by 1 along the axis
  double half_gap_ = 0.0, length_ = 0.0;
};

}  // namespace gapstrain::models
