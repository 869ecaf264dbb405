// Tubes as thick as bones, R/t from 2.2 to 5: section constants and ovalisation.
//
// Round tube of mid radius R and wall t: A = 2 pi R t, I = pi R t (R^2 + t^2/4), J = 2 I, all exact. A polygon of
// N sides is too small by 2/3 x^2 (A) and 4/3 x^2 (I, J), x = pi/N; nodes at R (1 + x^2/3) and walls of t (1 +
// x^2/3) make up for it to x^4, locally 1 + h^2/(12 rho^2) with the hoop edge h and the radius of curvature rho.
#include "structured_shell.h"

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

namespace gapstrain::tests {

namespace {

using std::numbers::pi;
constexpr double modulus = 17000.0;

// A closed mid-curve in the plane across the tube, with a wall of even thickness along its normal.
struct Curve {
  double half_y, half_z, thickness;

  Eigen::Vector3d point(double angle) const { return {0.0, half_y * std::sin(angle), half_z * std::cos(angle)}; }
  double speed(double angle) const { return std::hypot(half_y * std::cos(angle), half_z * std::sin(angle)); }
  double radius(double angle) const { return std::pow(speed(angle), 3) / (half_y * half_z); }
  Eigen::Vector3d normal(double angle) const {
    return Eigen::Vector3d(0.0, half_z * std::sin(angle), half_y * std::cos(angle)) / speed(angle);
  }
};

ShellModel tube(const Curve& curve, double length, const Grid& grid, const solver::ShellMaterial& material) {
  return structured_shell(
      grid,
      [&](double a, double b) {
        const double angle = 2.0 * pi * a, edge = curve.speed(angle) * 2.0 * pi / grid.columns;
        const double growth = std::pow(edge / curve.radius(angle), 2) / 12.0;
        const Eigen::Vector3d place = curve.point(angle) + growth * curve.radius(angle) * curve.normal(angle);
        return SurfacePoint{place + Eigen::Vector3d(length * b, 0.0, 0.0), curve.normal(angle),
                            curve.thickness * (1.0 + growth)};
      },
      Cells::quads, material);
}

struct Section {
  double area, about_y, about_z, polar;
};

// Both end sections move as rigid plates, one held: the stiffness against that motion is E A/L, E I/L or G J/L.
// With nu = 0 nothing hinders the section, so no end effect is mixed in.
Section measured_section(const Curve& curve, int around) {
  const double length = 2.0 * curve.half_y;
  const Grid grid{around, 6, true};
  const auto model = tube(curve, length, grid, solver::isotropic_shell(modulus, 0.0));
  const auto stiffness = assemble_stiffness(model);
  const auto resistance = [&](const Eigen::Vector3d& shift, const Eigen::Vector3d& turn) {
    Supports supports;
    for (int i = 0; i < around; ++i) {
      // Half of the motion at either end, of opposite sign: bending without shear.
      for (const double side : {-0.5, 0.5}) {
        const int node = grid.node(i, side < 0.0 ? 0 : grid.rows);
        const Eigen::Vector3d arm(0.0, model.nodes[static_cast<std::size_t>(node)].y(),
                                  model.nodes[static_cast<std::size_t>(node)].z());
        const Eigen::Vector3d motion = side * (shift + turn.cross(arm));
        // In torsion the wall shears, and its normal turns about itself by half of that strain.
        const auto& normal = model.directors[static_cast<std::size_t>(node)];
        const Eigen::Vector3d rotation = side * turn - turn.x() / length * arm.dot(normal) / 2.0 * normal;
        for (int axis = 0; axis < 3; ++axis) {
          supports.prescribe(node, static_cast<Motion>(axis), motion(axis));
          supports.prescribe(node, static_cast<Motion>(3 + axis), rotation(axis));
        }
      }
    }
    const auto answer = solve(stiffness, supports, Eigen::VectorXd::Zero(model.unknowns()));
    return length * answer.displacement.dot(stiffness * answer.displacement);
  };
  const Eigen::Vector3d none = Eigen::Vector3d::Zero();
  return {resistance(Eigen::Vector3d::UnitX(), none) / modulus,
          resistance(none, Eigen::Vector3d::UnitY()) / modulus,
          resistance(none, Eigen::Vector3d::UnitZ()) / modulus,
          resistance(none, Eigen::Vector3d::UnitX()) / (modulus / 2.0)};
}

// Area integrals over the true wall, point by point: dA = (1 + zeta/rho) ds dzeta.
Section true_section(const Curve& curve) {
  Section sum{};
  constexpr int steps = 720;
  const double gauss = std::sqrt(0.6);
  for (int k = 0; k < steps; ++k) {
    const double angle = 2.0 * pi * k / steps;
    for (const double at : {-gauss, 0.0, gauss}) {
      const double zeta = at * curve.thickness / 2.0, weight = (at == 0.0 ? 8.0 : 5.0) / 18.0;
      const double area =
          weight * curve.thickness * curve.speed(angle) * 2.0 * pi / steps * (1.0 + zeta / curve.radius(angle));
      const Eigen::Vector3d place = curve.point(angle) + zeta * curve.normal(angle);
      sum.area += area;
      sum.about_y += area * place.z() * place.z();
      sum.about_z += area * place.y() * place.y();
    }
  }
  sum.polar = sum.about_y + sum.about_z;  // torsion constant of a round section only
  return sum;
}

// Exact plane strain of a ring under sigma_r = cos 2phi on its outer surface, unit pressure: Michell 1899, Proc
// London Math Soc 31:100, stress function (A r^2 + B r^4 + C r^-2 + D) cos 2phi.
class PressedRing {
 public:
  PressedRing(double inner, double outer, double nu) : nu_(nu) {
    Eigen::Matrix4d conditions;
    const auto rows = [&](double r) {
      Eigen::Matrix<double, 2, 4> two;
      two << -2.0, 0.0, -6.0 * std::pow(r, -4), -4.0 * std::pow(r, -2),      // sigma_r
          2.0, 6.0 * r * r, -6.0 * std::pow(r, -4), -2.0 * std::pow(r, -2);  // tau
      return two;
    };
    conditions.topRows<2>() = rows(inner);
    conditions.bottomRows<2>() = rows(outer);
    constants_ = conditions.fullPivLu().solve(Eigen::Vector4d(0.0, 0.0, 1.0, 0.0));
  }

  // Amplitudes of cos 2phi.
  double hoop_stress(double r) const {
    return 2.0 * constants_(0) + 12.0 * constants_(1) * r * r + 6.0 * constants_(2) * std::pow(r, -4);
  }
  double radial_shift(double r) const {
    const double lateral = nu_ / (1.0 - nu_);
    const double a = constants_(0), b = constants_(1), c = constants_(2), d = constants_(3);
    return (1.0 - nu_ * nu_) / modulus *
           (-2.0 * a * r + 2.0 * c * std::pow(r, -3) + 4.0 * d / r -
            lateral * (2.0 * a * r + 4.0 * b * std::pow(r, 3) - 2.0 * c * std::pow(r, -3)));
  }

 private:
  double nu_;
  Eigen::Vector4d constants_;
};

struct Ovalisation {
  double shift, hoop_inside, hoop_outside;
};

// One row of quads kept from any change along the tube.
Ovalisation ovalisation_over_exact(double radius, double thickness) {
  constexpr double nu = 0.3;
  constexpr int around = 144;
  const double length = 2.0 * pi * radius / around;
  const Grid grid{around, 1, true};
  const auto model = tube({radius, radius, thickness}, length, grid, solver::isotropic_shell(modulus, nu));
  Supports supports;
  for (int node = 0; node < grid.count(); ++node) supports.hold(node, {ux, ry, rz});
  supports.hold(grid.node(0, 0), {uy});
  Eigen::VectorXd load = Eigen::VectorXd::Zero(model.unknowns());
  const double outer = radius + thickness / 2.0;
  for (int i = 0; i < around; ++i)
    for (const int row : {0, 1})
      load.segment<3>(6 * grid.node(i, row)) = std::cos(4.0 * pi * i / around) * length / 2.0 * 2.0 * pi * outer /
                                               around * model.directors[static_cast<std::size_t>(i)];
  supports.hold(grid.node(around / 4, 0), {uz});
  const auto answer = solve(model, supports, load);
  const PressedRing ring(radius - thickness / 2.0, outer, nu);
  // Half the change of a diameter: a rigid shift drops out.
  const double shift = (answer.at(grid.node(0, 0), uz) - answer.at(grid.node(around / 2, 0), uz)) / 2.0;
  return {shift / ring.radial_shift(radius),
          averaged_stress(model, answer.displacement, 0, -1.0)(1) / ring.hoop_stress(radius - thickness / 2.0),
          averaged_stress(model, answer.displacement, 0, 1.0)(1) / ring.hoop_stress(outer)};
}

}  // namespace

TEST_CASE("a round tube with 24 elements around has the true area, inertia and torsion constant",
          "[elements][tube]") {
  const double ratio = GENERATE(2.2, 2.3, 3.0, 4.0, 5.0);
  CAPTURE(ratio);
  const double radius = 10.0, thickness = radius / ratio;
  const auto section = measured_section({radius, radius, thickness}, 24);
  const double area = 2.0 * pi * radius * thickness;
  const double inertia = pi * radius * thickness * (radius * radius + thickness * thickness / 4.0);
  CHECK(section.area == Approx(area).epsilon(1e-3));
  CHECK(section.about_y == Approx(inertia).epsilon(1e-3));
  CHECK(section.about_z == Approx(inertia).epsilon(1e-3));
  CHECK(section.polar == Approx(2.0 * inertia).epsilon(1.1e-3));
}

// What the corrected polygon leaves in torsion, -1.05e-3 at 24 elements for any wall, is of second order.
TEST_CASE("a round tube's torsion constant converges with the square of the element size", "[elements][tube]") {
  const Curve round{10.0, 10.0, 10.0 / 3.0};
  const double exact = true_section(round).polar;
  const double coarse = exact - measured_section(round, 24).polar,
               fine = exact - measured_section(round, 48).polar;
  CHECK(std::log2(coarse / fine) == Approx(2.0).margin(0.2));
}

// No torsion: an ellipse warps, and its constant is not the sum of its inertias.
TEST_CASE("an elliptic tube has the true area and inertias", "[elements][tube]") {
  const Curve ellipse{14.0, 10.0, 4.0};
  const auto section = measured_section(ellipse, 24), exact = true_section(ellipse);
  CHECK(section.area == Approx(exact.area).epsilon(5e-3));
  CHECK(section.about_y == Approx(exact.about_y).epsilon(5e-3));
  CHECK(section.about_z == Approx(exact.about_z).epsilon(5e-3));
}

// Shell over exact as an independent prototype of the same element had it: the shell is 3 % too soft at R/t = 2.3
// and 1 % at 4. That is shell theory's own share, not the mesh's.
TEST_CASE("a thick ring ovalises as plane elasticity, but for what a shell leaves out", "[elements][tube]") {
  struct Row {
    double ratio, shift, hoop_inside, hoop_outside;
  };
  const Row row = GENERATE(values<Row>({{2.3, 1.030, 0.984, 0.980},
                                        {3.0, 1.017, 0.989, 0.987},
                                        {4.0, 1.009, 0.993, 0.992},
                                        {6.0, 1.003, 0.995, 0.995}}));
  CAPTURE(row.ratio);
  const auto measured = ovalisation_over_exact(10.0, 10.0 / row.ratio);
  CHECK(measured.shift == Approx(row.shift).epsilon(5e-3));
  CHECK(measured.hoop_inside == Approx(row.hoop_inside).epsilon(5e-3));
  CHECK(measured.hoop_outside == Approx(row.hoop_outside).epsilon(5e-3));
}

}  // namespace gapstrain::tests
