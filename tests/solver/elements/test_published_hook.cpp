// Raasch's hook: Knight 1997, AIAA J 35(2), "Raasch challenge for shell elements". Two arcs of a 2 mm strip 20
// wide, radius 14 through 60 degrees (clamped) and radius 46 through 150 degrees (free), E = 3300, nu = 0.35, unit
// shear load across the tip along the width. Mesh n across and 7 n along, tip displacement along the load at the
// strip's edge.
//
// Ratios are to 4.9352, the solid value most often quoted (from memory); shear-flexible shell theory tends
// to 5.02, that is to 1.017, and must stay there: elements with a normal of their own at a shared node grow
// without limit.
#include "published_table.h"

#include <cmath>
#include <numbers>

namespace gapstrain::tests {

namespace {

SurfacePoint hook(double a, double b) {
  const double first = 14.0 * std::numbers::pi / 3.0, second = 46.0 * std::numbers::pi * 5.0 / 6.0;
  const double arc = a * (first + second);
  const auto radial = [](double angle) { return Eigen::Vector3d(-std::cos(angle), std::sin(angle), 0.0); };
  const Eigen::Vector3d centre_1(14.0, 0.0, 0.0), width(0.0, 0.0, 20.0 * b);
  const double turn = std::numbers::pi / 3.0;
  if (arc <= first) return {centre_1 + 14.0 * radial(arc / 14.0) + width, radial(arc / 14.0), 2.0};
  // The second arc bends the other way about a centre on the far side of the junction.
  const Eigen::Vector3d centre_2 = centre_1 + (14.0 + 46.0) * radial(turn);
  const Eigen::Vector3d director = radial(turn - (arc - first) / 46.0);
  return {centre_2 - 46.0 * director + width, director, 2.0};
}

double tip_shift(int across, Cells cells) {
  const Grid grid{7 * across, across};
  const auto model = structured_shell(grid, hook, cells, solver::isotropic_shell(3300.0, 0.35));
  return solve(model, clamped_root(grid), tip_load(grid, uz, 1.0)).at(grid.node(grid.columns, 0), uz);
}

}  // namespace

TEST_CASE("Raasch's hook converges to shear-flexible shell theory and stays there", "[elements][published]") {
  const auto finest =
      check_table(4.9352, Cells::first_diagonal,
                  {{4, 0.982, 0.979}, {8, 0.997, 0.992}, {16, 1.010, 1.007}, {32, 1.016, 1.015}}, tip_shift);
  CHECK(finest.quads * 4.9352 == Approx(5.02).epsilon(0.005));
  CHECK(finest.triangles * 4.9352 == Approx(5.02).epsilon(0.005));
}

}  // namespace gapstrain::tests
