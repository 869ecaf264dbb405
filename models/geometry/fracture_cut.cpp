#include "models/geometry/fracture_cut.h"

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

std::size_t fragment_at(const std::vector<Fracture>& fractures, Length x) {
  return static_cast<std::size_t>(std::count_if(fractures.begin(), fractures.end(),
                                                [x](const Fracture& fracture) { return fracture.position < x; }));
}

CutThroughBone::CutThroughBone(const Fracture& fracture, const BoneShape& bone)
    : half_gap_(0.5 * fracture.gap.value()) {
  const BoneSection section = bone.section(fracture.position.value());
  const double slope = std::tan(fracture.obliquity.value());
  const double y = std::sin(fracture.direction.value()), z = std::cos(fracture.direction.value());
  centre_ = section.centre;
  square_ = section.tangent - slope * (y * section.y_axis + z * section.z_axis);
  length_ = fracture.gap.value() + 2.0 * slope * std::hypot(section.semi_y * y, section.semi_z * z);
}

double CutThroughBone::beyond(const Eigen::Vector3d& place) const { return square_.dot(place - centre_); }

double CutThroughBone::edge_distance(const Eigen::Vector3d& place) const {
  return (std::abs(beyond(place)) - half_gap_) / square_.norm();
}

}  // namespace gapstrain::models
