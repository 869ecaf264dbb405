// What both shell elements share: the local frame at a point of the wall and the change to it. Private to
// elements.
#pragma once

#include "solver/elements/shell_material.h"

#include <Eigen/Core>
#include <Eigen/Geometry>
#include <Eigen/LU>

namespace gapstrain::solver::detail {

inline constexpr double gauss = 0.57735026918962576;  // two-point rule on [-1, 1], weights 1

// theta -> theta x n.
inline Eigen::Matrix3d turn_of(const Eigen::Vector3d& n) {
  Eigen::Matrix3d matrix;
  matrix << 0.0, n.z(), -n.y(), -n.z(), 0.0, n.x(), n.y(), -n.x(), 0.0;
  return matrix;
}

// Material axis 1 on the tangent plane, unit. Where it stands on the wall there is no direction to prefer:
// `otherwise`, which must lie in the plane, is taken.
inline Eigen::Vector3d tangent_axis(const Eigen::Vector3d& normal, const Eigen::Vector3d& axis_1,
                                    const Eigen::Vector3d& otherwise) {
  const Eigen::Vector3d projected = axis_1 - axis_1.dot(normal) * normal;
  const bool upright = projected.squaredNorm() < 1e-12 * axis_1.squaredNorm();
  return (upright ? otherwise : projected).normalized();
}

struct LocalFrame {
  Eigen::Matrix3d axes;           // columns e1 (material axis 1 on the tangent plane), e2, e3 (normal)
  Eigen::Matrix3d contravariant;  // columns g^1, g^2, g^3
  double jacobian = 0.0;
};

// At a point with the covariant base vectors g1, g2, g3, one a column.
inline LocalFrame local_frame(const Eigen::Matrix3d& covariant, const Eigen::Vector3d& axis_1) {
  LocalFrame frame;
  frame.jacobian = covariant.determinant();
  frame.contravariant = covariant.inverse().transpose();
  const Eigen::Vector3d normal = covariant.col(0).cross(covariant.col(1)).normalized();
  frame.axes.col(0) = tangent_axis(normal, axis_1, covariant.col(0));
  frame.axes.col(1) = normal.cross(frame.axes.col(0));
  frame.axes.col(2) = normal;
  return frame;
}

// Covariant strains (e11, e22, 2 e12, 2 e13, 2 e23) to (e11, e22, 2 e12) and (2 e13, 2 e23) in the local axes,
// with e33 = 0: eps_ab = sum e_ij (g^i . e_a)(g^j . e_b).
struct StrainChange {
  Eigen::Matrix<double, 3, 5> in_plane;
  Eigen::Matrix<double, 2, 5> shear;
};

inline StrainChange strain_change(const LocalFrame& frame) {
  const Eigen::Matrix3d d = frame.contravariant.transpose() * frame.axes;  // d(i, a) = g^i . e_a
  const auto row = [&](int a, int b) {
    Eigen::Matrix<double, 1, 5> r;
    r << d(0, a) * d(0, b), d(1, a) * d(1, b), 0.5 * (d(0, a) * d(1, b) + d(1, a) * d(0, b)),
        0.5 * (d(0, a) * d(2, b) + d(2, a) * d(0, b)), 0.5 * (d(1, a) * d(2, b) + d(2, a) * d(1, b));
    return r;
  };
  StrainChange change;
  change.in_plane.row(0) = row(0, 0);
  change.in_plane.row(1) = row(1, 1);
  change.in_plane.row(2) = 2.0 * row(0, 1);
  change.shear.row(0) = 2.0 * row(0, 2);
  change.shear.row(1) = 2.0 * row(1, 2);
  return change;
}

inline constexpr double shear_factor = 5.0 / 6.0;

inline Eigen::Matrix2d shear_law(const ShellMaterial& material) {
  return Eigen::Vector2d(shear_factor * material.shear_13, shear_factor * material.shear_23).asDiagonal();
}

// Share of one point in a geometric stiffness: area N_ab N_i,a N_j,b, the slopes along e1 and e2 made of those in
// the element's own coordinates, N,a = (g^1 . e_a) N,1 + (g^2 . e_a) N,2. (nodes x nodes)
template <int Nodes>
Eigen::Matrix<double, Nodes, Nodes> geometric_share(const LocalFrame& frame,
                                                    const Eigen::Matrix<double, Nodes, 1>& n_1,
                                                    const Eigen::Matrix<double, Nodes, 1>& n_2,
                                                    const Eigen::Vector3d& membrane_force, double area) {
  const Eigen::Matrix2d change = frame.contravariant.leftCols<2>().transpose() * frame.axes.leftCols<2>();
  Eigen::Matrix<double, Nodes, 2> slopes;
  for (int a = 0; a < 2; ++a) slopes.col(a) = change(0, a) * n_1 + change(1, a) * n_2;
  Eigen::Matrix2d force;
  force << membrane_force(0), membrane_force(2), membrane_force(2), membrane_force(1);
  return area * slopes * force * slopes.transpose();
}

}  // namespace gapstrain::solver::detail
