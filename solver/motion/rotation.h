// Turns of any size as vectors: along their axis, by their angle in rad.
#pragma once

#include <Eigen/Geometry>

#include <cmath>

namespace gapstrain::solver {

inline Eigen::Matrix3d cross_matrix(const Eigen::Vector3d& v) {
  Eigen::Matrix3d matrix;
  matrix << 0.0, -v.z(), v.y(), v.z(), 0.0, -v.x(), -v.y(), v.x(), 0.0;
  return matrix;
}

// Rodrigues' formula.
inline Eigen::Matrix3d rotation_by(const Eigen::Vector3d& turn) {
  const double angle = turn.norm();
  if (angle == 0.0) return Eigen::Matrix3d::Identity();
  return Eigen::AngleAxisd(angle, turn / angle).toRotationMatrix();
}

// The turn of least angle, at most pi.
inline Eigen::Vector3d turn_of(const Eigen::Matrix3d& rotation) {
  const Eigen::AngleAxisd turn{Eigen::Quaterniond(rotation)};
  return turn.angle() * turn.axis();
}

// A change d of a turn moves what it turns by the spin J d about axes that do not turn (J. C. Simo and L. Vu-Quoc
// 1986, Comput. Methods Appl. Mech. Eng. 58, p. 79, from memory), and the inverse of J; below two full half turns.
inline Eigen::Matrix3d spin_of_turn(const Eigen::Vector3d& turn) {
  const double angle = turn.norm(), square = angle * angle;
  const bool is_small = angle < 1e-4;
  const double first = is_small ? 0.5 - square / 24.0 : (1.0 - std::cos(angle)) / square;
  const double second = is_small ? 1.0 / 6.0 - square / 120.0 : (angle - std::sin(angle)) / (square * angle);
  const Eigen::Matrix3d cross = cross_matrix(turn);
  return Eigen::Matrix3d::Identity() + first * cross + second * cross * cross;
}
inline Eigen::Matrix3d turn_of_spin(const Eigen::Vector3d& turn) {
  const double angle = turn.norm(), square = angle * angle;
  const double second =
      angle < 1e-3 ? 1.0 / 12.0 + square / 720.0 : (1.0 - 0.5 * angle / std::tan(0.5 * angle)) / square;
  const Eigen::Matrix3d cross = cross_matrix(turn);
  return Eigen::Matrix3d::Identity() - 0.5 * cross + second * cross * cross;
}

}  // namespace gapstrain::solver
