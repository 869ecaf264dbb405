// Linear buckling of a cantilever strip 100 x 10 x 2 under end compression, nu = 0: Euler's pi^2 E I / (4 L^2).
//
// The expected ratios are those of an independent prototype of the same formulation; they come from above with
// h^2.
#include "structured_shell.h"

#include <Eigen/Geometry>

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

namespace gapstrain::tests {

namespace {

double buckling_over_euler(const Grid& grid) {
  constexpr double length = 100.0, width = 10.0, thickness = 2.0, modulus = 113800.0;
  const auto model = structured_shell(
      grid,
      [](double a, double b) {
        return SurfacePoint{{length * a, width * b, 0.0}, Eigen::Vector3d::UnitZ(), thickness};
      },
      Cells::quads, solver::isotropic_shell(modulus, 0.0));
  const auto stiffness = assemble_stiffness(model);
  const auto supports = clamped_root(grid);
  const auto pressed = solve(stiffness, supports, tip_load(grid, ux, -1.0));
  const auto geometric = assemble_geometric_stiffness(model, pressed.displacement);

  // Inverse iteration from a sideways push; the quotient of energies is the critical load itself.
  Eigen::VectorXd mode = solve(stiffness, supports, tip_load(grid, uz, 1.0)).displacement;
  double critical = 0.0;
  for (int round = 0; round < 12; ++round) {
    mode = solve(stiffness, supports, -(geometric * mode)).displacement.normalized();
    critical = mode.dot(stiffness * mode) / -mode.dot(geometric * mode);
  }
  const double inertia = width * std::pow(thickness, 3) / 12.0;
  return critical / (std::pow(std::numbers::pi / length, 2) * modulus * inertia / 4.0);
}

}  // namespace

TEST_CASE("a pressed cantilever strip buckles at Euler's load", "[elements][buckling]") {
  CHECK(buckling_over_euler({10, 1}) == Approx(1.0039).margin(1e-4));
  CHECK(buckling_over_euler({20, 2}) == Approx(1.0008).margin(1e-4));
  CHECK(buckling_over_euler({40, 4}) == Approx(1.0001).margin(1e-4));
}

// Under an even membrane force a plane tilt w = p.x has the energy A (n11 p1^2 + 2 n12 p1 p2 + n22 p2^2), p1 and
// p2 its slopes along the material axes: exact for any shape of element.
TEST_CASE("a tilted element under membrane force has the energy of its slopes", "[elements][buckling]") {
  const Eigen::Vector3d force(31.0, -17.0, 11.0), axis_1(std::cos(0.7), std::sin(0.7), 0.0),
      axis_2(-std::sin(0.7), std::cos(0.7), 0.0), slope(0.03, -0.05, 0.0);
  const double p1 = slope.dot(axis_1), p2 = slope.dot(axis_2);
  const double per_area = force(0) * p1 * p1 + 2.0 * force(2) * p1 * p2 + force(1) * p2 * p2;

  solver::QuadShape quad;
  quad.nodes << 0.0, 0.0, 0.0, 2.1, 0.3, 0.0, 1.7, 1.9, 0.0, -0.4, 1.2, 0.0;
  quad.directors = Eigen::RowVector3d::UnitZ().replicate<4, 1>();
  quad.thickness.setConstant(0.3);
  quad.axis_1 = axis_1;
  const Eigen::Vector4d w = quad.nodes * slope;
  const Eigen::Matrix4d of_quad = solver::quad_geometric_stiffness(quad, force.transpose().replicate<4, 1>());
  const double quad_area = 0.5 * (1.7 * 0.9 + 2.5 * 1.9);  // half the cross product of the diagonals
  CHECK(solver::quad_area(quad) == Approx(quad_area));
  CHECK(w.dot(of_quad * w) == Approx(per_area * quad_area));

  solver::TriangleShape triangle;
  triangle.nodes = quad.nodes.topRows<3>();
  triangle.directors = quad.directors.topRows<3>();
  triangle.thickness.setConstant(0.3);
  triangle.axis_1 = axis_1;
  const Eigen::Vector3d w3 = w.head<3>();
  const double triangle_area = 0.5 * (2.1 * 1.9 - 0.3 * 1.7);
  CHECK(solver::triangle_area(triangle) == Approx(triangle_area));
  CHECK(w3.dot(solver::triangle_geometric_stiffness(triangle, force) * w3) == Approx(per_area * triangle_area));
}

}  // namespace gapstrain::tests
