#include "solver/elements/beam.h"

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace gapstrain::solver {

namespace {

Eigen::Matrix3d cross_matrix(const Eigen::Vector3d& r) {
  Eigen::Matrix3d matrix;
  matrix << 0.0, -r.z(), r.y(), r.z(), 0.0, -r.x(), -r.y(), r.x(), 0.0;
  return matrix;
}

}  // namespace

BeamSection solid_circle(double diameter, double youngs_modulus, double poissons_ratio) {
  const double radius = diameter / 2.0;
  const double area = std::numbers::pi * radius * radius;
  const double inertia = area * radius * radius / 4.0;
  const double shear_modulus = youngs_modulus / (2.0 * (1.0 + poissons_ratio));
  const double kappa = 6.0 * (1.0 + poissons_ratio) / (7.0 + 6.0 * poissons_ratio);
  return {youngs_modulus * area, youngs_modulus * inertia, shear_modulus * 2.0 * inertia,
          kappa * shear_modulus * area};
}

Matrix6 beam_flexibility(const BeamSection& section, const Eigen::Vector3d& end_1, const Eigen::Vector3d& end_2) {
  const Eigen::Vector3d axis = end_2 - end_1;
  const double length = axis.norm();
  Matrix6 flexibility = Matrix6::Zero();
  if (length == 0.0) return flexibility;
  // A circular section has no preferred plane: along and across the axis is all there is.
  const Eigen::Vector3d x = axis / length;
  const Eigen::Matrix3d along = x * x.transpose();
  const Eigen::Matrix3d across = Eigen::Matrix3d::Identity() - along;
  const double sway = std::pow(length, 3) / (3.0 * section.bending) + length / section.shear;
  const double slope = length * length / (2.0 * section.bending);
  flexibility.topLeftCorner<3, 3>() = length / section.axial * along + sway * across;
  flexibility.bottomRightCorner<3, 3>() = length / section.torsion * along + length / section.bending * across;
  // A transverse force F turns the end by x cross F, a moment M shifts it by M cross x.
  flexibility.bottomLeftCorner<3, 3>() = slope * cross_matrix(x);
  flexibility.topRightCorner<3, 3>() = -slope * cross_matrix(x);
  return flexibility;
}

Matrix6 rigid_transfer(const Eigen::Vector3d& from, const Eigen::Vector3d& to) {
  Matrix6 transfer = Matrix6::Identity();
  transfer.topRightCorner<3, 3>() = -cross_matrix(to - from);
  return transfer;
}

Matrix12 beam_stiffness(const BeamSection& section, const Eigen::Vector3d& end_1, const Eigen::Vector3d& end_2) {
  if (end_1 == end_2) throw std::invalid_argument("a beam without length has no stiffness, only a flexibility");
  Eigen::Matrix<double, 6, 12> deformation;
  deformation << -rigid_transfer(end_1, end_2), Matrix6::Identity();
  return deformation.transpose() * beam_flexibility(section, end_1, end_2).inverse() * deformation;
}

}  // namespace gapstrain::solver
