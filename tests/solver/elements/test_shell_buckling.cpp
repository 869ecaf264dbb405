// Linear buckling of a cantilever strip 100 x 10 x 2 under end compression, nu = 0: Euler's pi^2 E I / (4 L^2).
//
// The expected ratios are those of an independent prototype of the same formulation; they come from above with
// h^2.
#include "structured_shell.h"

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

}  // namespace gapstrain::tests
