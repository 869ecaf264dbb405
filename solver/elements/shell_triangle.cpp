#include "solver/elements/shell_triangle.h"

#include "solver/elements/shell_kinematics.h"

#include <Eigen/LU>

#include <algorithm>
#include <array>
#include <stdexcept>

namespace gapstrain::solver {

namespace {

using detail::gauss;
using detail::LocalFrame;
using detail::turn_of;
// Columns 18 to 20 belong to the bubble rotation theta_4, condensed before the element is handed out.
constexpr int columns = 21;
using Rows3 = Eigen::Matrix<double, 3, columns>;
using Row = Eigen::Matrix<double, 1, columns>;
using Full = Eigen::Matrix<double, columns, columns>;

struct ShapeValues {
  Eigen::Vector3d n;
  double bubble = 0.0, bubble_r = 0.0, bubble_s = 0.0;
};

constexpr std::array<double, 3> n_r = {-1, 1, 0};
constexpr std::array<double, 3> n_s = {-1, 0, 1};

ShapeValues shape_values(double r, double s) {
  const double t = 1.0 - r - s;
  return {Eigen::Vector3d(t, r, s), 27.0 * r * s * t, 27.0 * s * (t - r), 27.0 * r * (t - s)};
}

// Kinematics with a rotation bubble (Lee, Lee & Bathe 2014, Comput Struct 138:12): MITC3+.
class Kinematics {
 public:
  explicit Kinematics(const TriangleShape& shape) : shape_(shape) {
    const Eigen::Vector3d side_1 = shape.nodes.row(1) - shape.nodes.row(0);
    const Eigen::Vector3d side_2 = shape.nodes.row(2) - shape.nodes.row(0);
    normal_ = side_1.cross(side_2).normalized();
    area_ = 0.5 * side_1.cross(side_2).norm();
    for (int i = 0; i < 3; ++i) {
      half_director_.row(i) = 0.5 * shape.thickness(i) * shape.directors.row(i);
      turn_[static_cast<std::size_t>(i)] = turn_of(half_director_.row(i).transpose());
    }
    bubble_director_ = shape.directors.colwise().mean().transpose().normalized();
    bubble_turn_ = turn_of(0.5 * shape.thickness.mean() * bubble_director_);
    for (std::size_t point = 0; point < 6; ++point) tie_[point] = raw_shear(tying[point][0], tying[point][1]);
  }

  Eigen::Matrix3d covariant(const ShapeValues& v, double zeta) const {
    Eigen::Matrix3d g = Eigen::Matrix3d::Zero();
    for (int i = 0; i < 3; ++i) {
      const Eigen::Vector3d place = (shape_.nodes.row(i) + zeta * half_director_.row(i)).transpose();
      g.col(0) += n_r[static_cast<std::size_t>(i)] * place;
      g.col(1) += n_s[static_cast<std::size_t>(i)] * place;
      g.col(2) += v.n(i) * half_director_.row(i).transpose();
    }
    return g;
  }

  // Covariant rows e11, e22, 2 e12 (at zeta) and assumed 2 e13, 2 e23. Of the in-plane rows only what changes with
  // zeta is kept; the mid-surface's own strain belongs to the membrane template.
  Eigen::Matrix<double, 5, columns> strain(const ShapeValues& v, const Eigen::Matrix3d& g, double r, double s,
                                           double zeta) const {
    Rows3 u_1 = slope(n_r, v.bubble_r, zeta), u_2 = slope(n_s, v.bubble_s, zeta);
    Eigen::Matrix<double, 5, columns> rows;
    rows.row(0) = g.col(0).transpose() * u_1;
    rows.row(1) = g.col(1).transpose() * u_2;
    rows.row(2) = g.col(0).transpose() * u_2 + g.col(1).transpose() * u_1;
    const Eigen::Matrix3d g_mid = covariant(v, 0.0);
    const Rows3 m_1 = slope(n_r, 0.0, 0.0), m_2 = slope(n_s, 0.0, 0.0);
    rows.row(0) -= g_mid.col(0).transpose() * m_1;
    rows.row(1) -= g_mid.col(1).transpose() * m_2;
    rows.row(2) -= g_mid.col(0).transpose() * m_2 + g_mid.col(1).transpose() * m_1;
    enum { a, b, c, d, e, f };
    const auto& t = tie_;
    const Row twist = t[f].row(0) - t[d].row(0) - t[f].row(1) + t[e].row(1);
    rows.row(3) = 2.0 / 3.0 * (t[b].row(0) - 0.5 * t[b].row(1)) + (t[c].row(0) + t[c].row(1)) / 3.0 +
                  (3.0 * s - 1.0) / 3.0 * twist;
    rows.row(4) = 2.0 / 3.0 * (t[a].row(1) - 0.5 * t[a].row(0)) + (t[c].row(0) + t[c].row(1)) / 3.0 +
                  (1.0 - 3.0 * r) / 3.0 * twist;
    return rows;
  }

  const Eigen::Vector3d& normal() const { return normal_; }
  const Eigen::Vector3d& bubble_director() const { return bubble_director_; }
  double area() const { return area_; }

 private:
  static constexpr double offset = 1e-4;
  static constexpr std::array<std::array<double, 2>, 6> tying = {{{1.0 / 6, 2.0 / 3},
                                                                  {2.0 / 3, 1.0 / 6},
                                                                  {1.0 / 6, 1.0 / 6},
                                                                  {1.0 / 3 + offset, 1.0 / 3 - 2 * offset},
                                                                  {1.0 / 3 - 2 * offset, 1.0 / 3 + offset},
                                                                  {1.0 / 3 + offset, 1.0 / 3 + offset}}};

  Rows3 slope(const std::array<double, 3>& n_slope, double bubble_slope, double zeta) const {
    Rows3 rows = Rows3::Zero();
    for (int i = 0; i < 3; ++i) {
      const auto k = static_cast<std::size_t>(i);
      rows.middleCols<3>(6 * i) = n_slope[k] * Eigen::Matrix3d::Identity();
      rows.middleCols<3>(6 * i + 3) = n_slope[k] * zeta * turn_[k];
    }
    rows.middleCols<3>(18) = bubble_slope * zeta * bubble_turn_;
    return rows;
  }

  // 2 e13 and 2 e23 of the displacements at the mid-surface.
  Eigen::Matrix<double, 2, columns> raw_shear(double r, double s) const {
    const ShapeValues v = shape_values(r, s);
    const Eigen::Matrix3d g = covariant(v, 0.0);
    Rows3 u_3 = Rows3::Zero();
    for (int i = 0; i < 3; ++i) u_3.middleCols<3>(6 * i + 3) = v.n(i) * turn_[static_cast<std::size_t>(i)];
    u_3.middleCols<3>(18) = v.bubble * bubble_turn_;
    Eigen::Matrix<double, 2, columns> rows;
    rows.row(0) = g.col(0).transpose() * u_3 + g.col(2).transpose() * slope(n_r, 0.0, 0.0);
    rows.row(1) = g.col(1).transpose() * u_3 + g.col(2).transpose() * slope(n_s, 0.0, 0.0);
    return rows;
  }

  const TriangleShape& shape_;
  Eigen::Vector3d normal_, bubble_director_;
  double area_ = 0.0;
  Eigen::Matrix3d half_director_;
  std::array<Eigen::Matrix3d, 3> turn_;
  Eigen::Matrix3d bubble_turn_;
  std::array<Eigen::Matrix<double, 2, columns>, 6> tie_;
};

// Membrane with corner drilling rotations in the element's plane: ANDES template of Felippa 2003, Comput Methods
// Appl Mech Eng 192:2125, with alpha_b = 1 so that its edge moments match the quad's.
class Membrane {
 public:
  Membrane(const TriangleShape& shape, const Eigen::Vector3d& normal, const ShellMaterial& material) {
    const Eigen::Vector3d side = (shape.nodes.row(1) - shape.nodes.row(0)).transpose();
    const Eigen::Vector3d first = detail::tangent_axis(normal, shape.axis_1, side);
    Eigen::Matrix3d axes;  // rows e1 (material axis 1), e2, e3
    axes.row(0) = first.transpose();
    axes.row(1) = normal.cross(first).transpose();
    axes.row(2) = normal.transpose();
    const Eigen::Matrix<double, 3, 2> places = shape.nodes * axes.topRows<2>().transpose();
    x_ = places.col(0);
    y_ = places.col(1);
    area_ = 0.5 * (dx(1, 0) * dy(2, 0) - dx(2, 0) * dy(1, 0));
    law_ = material.plane_stress;
    volume_ = area_ * shape.thickness.mean();
    beta_ = std::max(0.5 * (1.0 - 4.0 * material.poisson * material.poisson), 0.01);
    // (u, v, psi) a node from the 18 unknowns.
    to_plane_.setZero();
    for (int i = 0; i < 3; ++i) {
      to_plane_.block<2, 3>(3 * i, 6 * i) = axes.topRows<2>();
      to_plane_.block<1, 3>(3 * i + 2, 6 * i + 3) = normal.transpose();
    }
  }

  // Constant strain (e11, e22, 2 e12) in material axes of the basic part. (3 x 18)
  Eigen::Matrix<double, 3, 18> basic_strain() const {
    constexpr double alpha = 1.0;
    Eigen::Matrix<double, 3, 9> rows;
    for (int i = 0; i < 3; ++i) {
      const int j = (i + 1) % 3, k = (i + 2) % 3;
      rows.col(3 * i) << dy(j, k), 0.0, dx(k, j);
      rows.col(3 * i + 1) << 0.0, dx(k, j), dy(j, k);
      rows.col(3 * i + 2) << alpha * dy(j, k) * (dy(i, k) - dy(j, i)) / 6.0,
          alpha * dx(k, j) * (dx(k, i) - dx(i, j)) / 6.0,
          alpha * (dx(k, i) * dy(i, k) - dx(i, j) * dy(j, i)) / 3.0;
    }
    return rows / (2.0 * area_) * to_plane_;
  }

  // Energy of the deviation of the drilling rotations from the mean strain's. (18 x 18)
  Eigen::Matrix<double, 18, 18> higher_order() const {
    const double l21 = square(1, 0), l32 = square(2, 1), l13 = square(0, 2);
    Eigen::Matrix3d natural;  // natural side strains to Cartesian
    natural << dy(1, 2) * dy(0, 2) * l21, dy(2, 0) * dy(1, 0) * l32, dy(0, 1) * dy(2, 1) * l13,  //
        dx(1, 2) * dx(0, 2) * l21, dx(2, 0) * dx(1, 0) * l32, dx(0, 1) * dx(2, 1) * l13,         //
        (dy(1, 2) * dx(2, 0) + dx(2, 1) * dy(0, 2)) * l21, (dy(2, 0) * dx(0, 1) + dx(0, 2) * dy(1, 0)) * l32,
        (dy(0, 1) * dx(1, 2) + dx(1, 0) * dy(2, 1)) * l13;
    natural /= 4.0 * area_ * area_;
    const Eigen::Matrix3d natural_law = natural.transpose() * law_ * natural;

    constexpr std::array<double, 9> b = {1, 2, 1, 0, 1, -1, -1, -1, -2};
    const auto q = [&](std::array<int, 9> pick) {
      Eigen::Matrix3d matrix;
      for (int row = 0; row < 3; ++row)
        for (int column = 0; column < 3; ++column)
          matrix(row, column) = b[static_cast<std::size_t>(pick[static_cast<std::size_t>(3 * row + column)] - 1)];
      const Eigen::Vector3d sides(l21, l32, l13);
      return Eigen::Matrix3d(2.0 * area_ / 3.0 * sides.cwiseInverse().asDiagonal() * matrix);
    };
    const Eigen::Matrix3d q1 = q({1, 2, 3, 4, 5, 6, 7, 8, 9}), q2 = q({9, 7, 8, 3, 1, 2, 6, 4, 5}),
                          q3 = q({5, 6, 4, 8, 9, 7, 2, 3, 1});
    Eigen::Matrix3d rotation_law = Eigen::Matrix3d::Zero();
    for (const Eigen::Matrix3d& mid :
         {Eigen::Matrix3d(0.5 * (q1 + q2)), Eigen::Matrix3d(0.5 * (q2 + q3)), Eigen::Matrix3d(0.5 * (q3 + q1))})
      rotation_law += volume_ * mid.transpose() * natural_law * mid;

    Eigen::Matrix<double, 3, 9> deviation;
    for (int row = 0; row < 3; ++row) {
      deviation.row(row) << dx(2, 1), dy(2, 1), 0.0, dx(0, 2), dy(0, 2), 0.0, dx(1, 0), dy(1, 0), 0.0;
      deviation.row(row) /= 4.0 * area_;
      deviation(row, 3 * row + 2) += 1.0;
    }
    const Eigen::Matrix<double, 3, 18> rows = deviation * to_plane_;
    return 0.75 * beta_ * rows.transpose() * rotation_law * rows;
  }

 private:
  double dx(int a, int b) const { return x_(a) - x_(b); }
  double dy(int a, int b) const { return y_(a) - y_(b); }
  double square(int a, int b) const { return dx(a, b) * dx(a, b) + dy(a, b) * dy(a, b); }

  Eigen::Vector3d x_, y_;
  double area_ = 0.0, volume_ = 0.0, beta_ = 0.0;
  Eigen::Matrix3d law_;
  Eigen::Matrix<double, 9, 18> to_plane_;
};

// Degree five, seven points: exact for the bubble's squares.
struct Point {
  double r, s, weight;
};
constexpr double a1 = 0.10128650732345634, w1 = 0.06296959027241357;
constexpr double a2 = 0.47014206410511505, w2 = 0.06619707639425309;
constexpr std::array<Point, 7> points = {{{1.0 / 3, 1.0 / 3, 0.1125},
                                          {a1, a1, w1},
                                          {1 - 2 * a1, a1, w1},
                                          {a1, 1 - 2 * a1, w1},
                                          {a2, a2, w2},
                                          {1 - 2 * a2, a2, w2},
                                          {a2, 1 - 2 * a2, w2}}};

}  // namespace

TriangleMatrix triangle_stiffness(const TriangleShape& shape, const ShellMaterial& material) {
  const Kinematics kinematics(shape);
  const Membrane membrane(shape, kinematics.normal(), material);
  const Eigen::Matrix<double, 3, 18> basic = membrane.basic_strain();
  const Eigen::Matrix2d shear_law = detail::shear_law(material);
  Full full = Full::Zero();
  for (const auto& point : points) {
    const ShapeValues values = shape_values(point.r, point.s);
    for (const double zeta : {-gauss, gauss}) {
      const Eigen::Matrix3d g = kinematics.covariant(values, zeta);
      const LocalFrame frame = detail::local_frame(g, shape.axis_1);
      if (!(frame.jacobian > 0.0)) throw std::invalid_argument("a three-node shell is folded or inside out");
      const auto change = detail::strain_change(frame);
      const auto covariant = kinematics.strain(values, g, point.r, point.s, zeta);
      Rows3 in_plane = change.in_plane * covariant;
      in_plane.leftCols<18>() += basic;
      const Eigen::Matrix<double, 2, columns> shear = change.shear * covariant;
      const double volume = frame.jacobian * point.weight;
      full.noalias() += in_plane.transpose() * (volume * material.plane_stress * in_plane);
      full.noalias() += shear.transpose() * (volume * shear_law * shear);
    }
  }
  // The bubble has no stiffness about its own director; any positive spring there leaves the element unchanged.
  const Eigen::Vector3d director = kinematics.bubble_director();
  full.bottomRightCorner<3, 3>() +=
      material.shear_12() * kinematics.area() * shape.thickness.mean() * director * director.transpose();
  full.topLeftCorner<18, 18>() += membrane.higher_order();

  const Eigen::Matrix<double, 3, 18> condensed =
      Eigen::Matrix3d(full.bottomRightCorner<3, 3>()).inverse() * full.bottomLeftCorner<3, 18>();
  TriangleMatrix stiffness = full.topLeftCorner<18, 18>() - full.topRightCorner<18, 3>() * condensed;
  return 0.5 * (stiffness + stiffness.transpose());
}

TriangleStressRows triangle_stress(const TriangleShape& shape, const ShellMaterial& material, double zeta) {
  // The bubble's slopes vanish at the centroid, so its condensed value is not needed.
  const Kinematics kinematics(shape);
  const ShapeValues values = shape_values(1.0 / 3, 1.0 / 3);
  const Eigen::Matrix3d g = kinematics.covariant(values, zeta);
  const auto change = detail::strain_change(detail::local_frame(g, shape.axis_1));
  const Rows3 bending =
      change.in_plane.leftCols<3>() * kinematics.strain(values, g, 1.0 / 3, 1.0 / 3, zeta).topRows<3>();
  const Membrane membrane(shape, kinematics.normal(), material);
  return material.plane_stress * (bending.leftCols<18>() + membrane.basic_strain());
}

Eigen::Matrix3d triangle_geometric_stiffness(const TriangleShape& shape, const Eigen::Vector3d& membrane_force) {
  const Kinematics kinematics(shape);
  const Eigen::Matrix3d g = kinematics.covariant(shape_values(1.0 / 3, 1.0 / 3), 0.0);
  const LocalFrame frame = detail::local_frame(g, shape.axis_1);
  return detail::geometric_share<3>(frame, Eigen::Vector3d(n_r.data()), Eigen::Vector3d(n_s.data()),
                                    membrane_force, kinematics.area());
}

double triangle_area(const TriangleShape& shape) { return Kinematics(shape).area(); }

}  // namespace gapstrain::solver
