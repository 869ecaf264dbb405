#include "solver/elements/shell_quad.h"

#include "solver/elements/shell_kinematics.h"

#include <array>
#include <cmath>
#include <stdexcept>

namespace gapstrain::solver {

namespace {

using detail::gauss;
using detail::LocalFrame;
using Rows3 = Eigen::Matrix<double, 3, 24>;
using Row = Eigen::Matrix<double, 1, 24>;
using CovariantRows = Eigen::Matrix<double, 5, 24>;  // e11, e22, 2 e12, 2 e13, 2 e23

constexpr std::array<double, 4> xi_of = {-1, 1, 1, -1};
constexpr std::array<double, 4> eta_of = {-1, -1, 1, 1};

struct ShapeValues {
  Eigen::Vector4d n, n_xi, n_eta;  // bilinear shape functions
  Eigen::Vector4d m_xi, m_eta;     // slopes of the mid-side functions of edges 12, 23, 34, 41
};

ShapeValues shape_values(double xi, double eta) {
  ShapeValues v;
  for (int i = 0; i < 4; ++i) {
    const auto k = static_cast<std::size_t>(i);
    v.n(i) = 0.25 * (1.0 + xi_of[k] * xi) * (1.0 + eta_of[k] * eta);
    v.n_xi(i) = 0.25 * xi_of[k] * (1.0 + eta_of[k] * eta);
    v.n_eta(i) = 0.25 * eta_of[k] * (1.0 + xi_of[k] * xi);
  }
  v.m_xi << -xi * (1.0 - eta), 0.5 * (1.0 - eta * eta), -xi * (1.0 + eta), -0.5 * (1.0 - eta * eta);
  v.m_eta << -0.5 * (1.0 - xi * xi), -eta * (1.0 + xi), 0.5 * (1.0 - xi * xi), -eta * (1.0 - xi);
  return v;
}

// Kinematics of one element (symbols of Dvorkin & Bathe 1984: g covariant base, U displacement):
// X = sum N_i (x_i + z t_i/2 n_i),  U = sum N_i (u_i + z t_i/2 theta_i x n_i) + u_A.
class Kinematics {
 public:
  explicit Kinematics(const QuadShape& shape) : shape_(shape) {
    const Eigen::Vector3d diagonal_1 = shape.nodes.row(2) - shape.nodes.row(0);
    const Eigen::Vector3d diagonal_2 = shape.nodes.row(3) - shape.nodes.row(1);
    normal_ = diagonal_1.cross(diagonal_2).normalized();
    for (int i = 0; i < 4; ++i) {
      const Eigen::Vector3d n = 0.5 * shape.thickness(i) * shape.directors.row(i).transpose();
      half_director_.row(i) = n.transpose();
      turn_[static_cast<std::size_t>(i)] = detail::turn_of(n);
      const int j = (i + 1) % 4;
      const Eigen::Vector3d edge = (shape.nodes.row(j) - shape.nodes.row(i)).transpose();
      mid_side_.col(i) = normal_.cross(edge) / 8.0;
    }
    sample_shear();
  }

  Eigen::Matrix3d covariant(const ShapeValues& v, double zeta) const {
    Eigen::Matrix3d g;
    g.col(0) = (shape_.nodes + zeta * half_director_).transpose() * v.n_xi;
    g.col(1) = (shape_.nodes + zeta * half_director_).transpose() * v.n_eta;
    g.col(2) = half_director_.transpose() * v.n;
    return g;
  }

  // U,xi or U,eta by the slopes of N and, where wanted, of the mid-side functions.
  Rows3 slope(const Eigen::Vector4d& n_slope, const Eigen::Vector4d* m_slope, double zeta) const {
    Rows3 rows;
    for (int i = 0; i < 4; ++i) {
      rows.middleCols<3>(6 * i) = n_slope(i) * Eigen::Matrix3d::Identity();
      rows.middleCols<3>(6 * i + 3) = n_slope(i) * zeta * turn_[static_cast<std::size_t>(i)];
    }
    if (m_slope != nullptr) {
      // Edge k runs from node k to node k + 1 and moves by (psi_k - psi_k+1), psi = theta . n_e.
      for (int k = 0; k < 4; ++k) {
        const Eigen::Matrix3d part = m_slope->coeff(k) * mid_side_.col(k) * normal_.transpose();
        rows.middleCols<3>(6 * k + 3) += part;
        rows.middleCols<3>(6 * ((k + 1) % 4) + 3) -= part;
      }
    }
    return rows;
  }

  CovariantRows strain(const ShapeValues& v, const Eigen::Matrix3d& g, double xi, double eta, double zeta) const {
    const Rows3 u_1 = slope(v.n_xi, &v.m_xi, zeta);
    const Rows3 u_2 = slope(v.n_eta, &v.m_eta, zeta);
    CovariantRows rows;
    rows.row(0) = g.col(0).transpose() * u_1;
    rows.row(1) = g.col(1).transpose() * u_2;
    rows.row(2) = g.col(0).transpose() * u_2 + g.col(1).transpose() * u_1;
    rows.row(3) = 0.5 * ((1.0 - eta) * shear_xi_[0] + (1.0 + eta) * shear_xi_[1]);
    rows.row(4) = 0.5 * ((1.0 - xi) * shear_eta_[0] + (1.0 + xi) * shear_eta_[1]);
    return rows;
  }

  // Membrane's own rotation less the drilling unknowns', at the centre (Hughes & Brezzi 1989).
  Row drilling() const {
    const ShapeValues v = shape_values(0.0, 0.0);
    const Eigen::Matrix3d g = covariant(v, 0.0);
    const Eigen::Matrix3d contravariant = g.inverse().transpose();
    Row row = 0.5 * (normal_.cross(contravariant.col(0)).transpose() * slope(v.n_xi, &v.m_xi, 0.0) +
                     normal_.cross(contravariant.col(1)).transpose() * slope(v.n_eta, &v.m_eta, 0.0));
    for (int i = 0; i < 4; ++i) row.segment<3>(6 * i + 3) -= v.n(i) * normal_.transpose();
    return row;
  }

 private:
  // Assumed transverse shear strains of MITC4: 2 e13 tied at (0, -1) and (0, 1), 2 e23 at (-1, 0) and (1, 0).
  void sample_shear() {
    for (std::size_t side = 0; side < 2; ++side) {
      const double at = side == 0 ? -1.0 : 1.0;
      shear_xi_[side] = transverse(shape_values(0.0, at), true);
      shear_eta_[side] = transverse(shape_values(at, 0.0), false);
    }
  }

  Row transverse(const ShapeValues& v, bool along_xi) const {
    const Eigen::Matrix3d g = covariant(v, 0.0);
    const Rows3 u_a = slope(along_xi ? v.n_xi : v.n_eta, nullptr, 0.0);
    Rows3 u_3 = Rows3::Zero();
    for (int i = 0; i < 4; ++i) u_3.middleCols<3>(6 * i + 3) = v.n(i) * turn_[static_cast<std::size_t>(i)];
    return g.col(along_xi ? 0 : 1).transpose() * u_3 + g.col(2).transpose() * u_a;
  }

  const QuadShape& shape_;
  Eigen::Vector3d normal_;
  Eigen::Matrix<double, 4, 3> half_director_;
  std::array<Eigen::Matrix3d, 4> turn_;
  Eigen::Matrix<double, 3, 4> mid_side_;
  std::array<Row, 2> shear_xi_, shear_eta_;
};

// `point`: xi, eta, zeta.
QuadStressRows stress_at(const Kinematics& kinematics, const QuadShape& shape, const ShellMaterial& material,
                         const Eigen::Vector3d& point) {
  const ShapeValues values = shape_values(point(0), point(1));
  const Eigen::Matrix3d g = kinematics.covariant(values, point(2));
  const auto change = detail::strain_change(detail::local_frame(g, shape.axis_1));
  return material.plane_stress * (change.in_plane * kinematics.strain(values, g, point(0), point(1), point(2)));
}

}  // namespace

QuadMatrix quad_stiffness(const QuadShape& shape, const ShellMaterial& material) {
  const Kinematics kinematics(shape);
  const Eigen::Matrix2d shear_law = detail::shear_law(material);
  QuadMatrix stiffness = QuadMatrix::Zero();
  for (std::size_t point = 0; point < 4; ++point) {
    const double xi = gauss * xi_of[point], eta = gauss * eta_of[point];
    const ShapeValues values = shape_values(xi, eta);
    for (const double zeta : {-gauss, gauss}) {
      const Eigen::Matrix3d g = kinematics.covariant(values, zeta);
      const LocalFrame frame = detail::local_frame(g, shape.axis_1);
      if (!(frame.jacobian > 0.0)) throw std::invalid_argument("a four-node shell is folded or inside out");
      const CovariantRows covariant = kinematics.strain(values, g, xi, eta, zeta);
      const auto change = detail::strain_change(frame);
      const Rows3 in_plane = change.in_plane * covariant;
      const Eigen::Matrix<double, 2, 24> shear = change.shear * covariant;
      stiffness.noalias() += in_plane.transpose() * (frame.jacobian * material.plane_stress * in_plane);
      stiffness.noalias() += shear.transpose() * (frame.jacobian * shear_law * shear);
    }
  }
  // One point suffices: the Allman mid-side motion carries the alternating pattern of drilling rotations.
  const double centre_jacobian = kinematics.covariant(shape_values(0.0, 0.0), 0.0).determinant();
  const Row drilling = kinematics.drilling();
  stiffness.noalias() += drilling.transpose() * (8.0 * centre_jacobian * material.shear_12() * drilling);
  return stiffness;
}

QuadStressRows quad_stress(const QuadShape& shape, const ShellMaterial& material, double xi, double eta,
                           double zeta) {
  return stress_at(Kinematics(shape), shape, material, {xi, eta, zeta});
}

std::array<QuadStressRows, 4> quad_stresses(const QuadShape& shape, const ShellMaterial& material, double reach,
                                            double zeta) {
  const Kinematics kinematics(shape);
  std::array<QuadStressRows, 4> rows;
  for (std::size_t k = 0; k < 4; ++k)
    rows[k] = stress_at(kinematics, shape, material, {reach * xi_of[k], reach * eta_of[k], zeta});
  return rows;
}

Eigen::Matrix4d quad_geometric_stiffness(const QuadShape& shape,
                                         const Eigen::Matrix<double, 4, 3>& membrane_force) {
  const Kinematics kinematics(shape);
  Eigen::Matrix4d stiffness = Eigen::Matrix4d::Zero();
  for (std::size_t point = 0; point < 4; ++point) {
    const ShapeValues values = shape_values(gauss * xi_of[point], gauss * eta_of[point]);
    const Eigen::Matrix3d g = kinematics.covariant(values, 0.0);
    const LocalFrame frame = detail::local_frame(g, shape.axis_1);
    const double area = g.col(0).cross(g.col(1)).norm();
    const Eigen::Vector3d force = membrane_force.row(static_cast<Eigen::Index>(point)).transpose();
    stiffness += detail::geometric_share<4>(frame, values.n_xi, values.n_eta, force, area);
  }
  return stiffness;
}

double quad_area(const QuadShape& shape) {
  const Kinematics kinematics(shape);
  double area = 0.0;
  for (std::size_t point = 0; point < 4; ++point) {
    const Eigen::Matrix3d g = kinematics.covariant(shape_values(gauss * xi_of[point], gauss * eta_of[point]), 0.0);
    area += g.col(0).cross(g.col(1)).norm();
  }
  return area;
}

}  // namespace gapstrain::solver
