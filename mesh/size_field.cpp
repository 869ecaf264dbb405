#include "mesh/size_field.h"

#include <algorithm>
#include <cmath>

namespace gapstrain::mesh {

double Capsule::distance(const Eigen::Vector2d& point) const {
  const Eigen::Vector2d axis = end - start;
  const Eigen::Vector2d arm = point - start;
  const double squared_length = axis.squaredNorm();
  const double share = squared_length > 0.0 ? std::clamp(arm.dot(axis) / squared_length, 0.0, 1.0) : 0.0;
  return std::max(0.0, (arm - share * axis).norm() - radius);
}

Capsule capsule_round_ellipse(const Eigen::Vector2d& centre, double half_first, double half_second) {
  const double radius = std::min(half_first, half_second);
  const Eigen::Vector2d arm(half_first - radius, half_second - radius);
  return {centre - arm, centre + arm, radius};
}

void SizeField::add(const Capsule& capsule, double size) {
  if (size < size_max_) sources_.push_back({capsule, size});
}

double SizeField::operator()(const Eigen::Vector2d& point) const {
  double size = size_max_;
  for (const Source& source : sources_) {
    if (source.size < size) size = std::min(size, source.size + growth_ * source.capsule.distance(point));
  }
  return size;
}

}  // namespace gapstrain::mesh
