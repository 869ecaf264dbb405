#include "models/assembly/screw_interface.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace gapstrain::models {

solver::Matrix6 ring_flexibility(const BoneRing& ring, const Eigen::Vector3d& axis) {
  constexpr double n = ring_over_shaft, pi = std::numbers::pi;
  const double shear = ring.youngs_modulus / (2.0 * (1.0 + ring.poissons_ratio));
  const double k = (3.0 - ring.poissons_ratio) / (1.0 + ring.poissons_ratio);
  const double a = ring.radius, t = ring.thickness;
  const double across =
      (k * std::log(n) - (n * n - 1.0) / (k * (n * n + 1.0))) / (2.0 * pi * (k + 1.0) * shear * t);
  const double along = std::log(n) / (2.0 * pi * ring.shear_along * t);
  const double twist = (1.0 - 1.0 / (n * n)) / (4.0 * pi * shear * a * a * t);
  const double tilt = 1.0 / (t * t / (12.0 * across) + a * a / (2.0 * along));
  const Eigen::Matrix3d lengthwise = axis * axis.transpose();
  const Eigen::Matrix3d crosswise = Eigen::Matrix3d::Identity() - lengthwise;
  solver::Matrix6 flexibility = solver::Matrix6::Zero();
  flexibility.topLeftCorner<3, 3>() = along * lengthwise + across * crosswise;
  flexibility.bottomRightCorner<3, 3>() = twist * lengthwise + tilt * crosswise;
  return flexibility;
}

solver::Matrix6 bonded_flexibility(const solver::Matrix6& ring, const Eigen::Vector3d& middle,
                                   const solver::Matrix6& root, const Eigen::Vector3d& face) {
  const solver::Matrix6 transfer = solver::rigid_transfer(face, middle);
  return ring + transfer * root * transfer.transpose();
}

solver::Matrix6 interface_give(double stiffness, const solver::Matrix6& bonded) {
  assert(stiffness > 0.0 && stiffness <= 1.0);
  return (1.0 / stiffness - 1.0) * bonded;
}

Construct with_interface(const Construct& construct, double stiffness) {
  Construct other = construct;
  other.screw_interface = stiffness;
  other.interface_course.clear();
  return other;
}

double soft_bound_of(const Construct& construct) { return std::min(soft_interface, construct.screw_interface); }

}  // namespace gapstrain::models
