// Plates, in their plane and out of it: Cook's tapered panel and the clamped square plate, with the order of
// convergence.
#include "published_table.h"

#include <cmath>
#include <random>

namespace gapstrain::tests {

namespace {

// w D / (q L^4) at the centre of a square plate, clamped all round, under uniform load: t/L = 1e-3, n x n
// elements. Inner nodes are moved at random by up to `disturbance` element sides each way.
double clamped_plate(int n, Cells cells, double disturbance = 0.0, double share_of_triangles = 0.0) {
  constexpr double thickness = 1e-3, nu = 0.3, modulus = 2.1e5;
  const Grid grid{n, n};
  std::mt19937 engine(16);
  std::uniform_real_distribution<double> random(-1.0, 1.0);
  const auto plate = [&](double a, double b) {
    const bool inner = a > 0.0 && a < 1.0 && b > 0.0 && b < 1.0 && !(a == 0.5 && b == 0.5);
    const double shift = inner ? disturbance / n : 0.0;
    const double x = a + shift * random(engine), y = b + shift * random(engine);
    return SurfacePoint{{x, y, 0.0}, Eigen::Vector3d::UnitZ(), thickness};
  };
  auto model = structured_shell(grid, plate, Cells::quads, solver::isotropic_shell(modulus, nu));
  const auto load = even_load(model, {0.0, 0.0, 1.0});
  if (cells != Cells::quads) {
    engine.seed(16);
    model = structured_shell(grid, plate, cells, model.material);
  }
  std::vector<std::array<int, 4>> kept;
  for (const auto& cell : model.quads) {
    if (random(engine) >= 2.0 * share_of_triangles - 1.0) {
      kept.push_back(cell);
    } else {
      model.triangles.push_back({cell[0], cell[1], cell[2]});
      model.triangles.push_back({cell[0], cell[2], cell[3]});
    }
  }
  model.quads = kept;
  Supports supports;
  for (int k = 0; k <= n; ++k)
    for (const int node : {grid.node(0, k), grid.node(n, k), grid.node(k, 0), grid.node(k, n)})
      supports.hold(node, {ux, uy, uz, rx, ry, rz});
  const double flexural = modulus * std::pow(thickness, 3) / (12.0 * (1.0 - nu * nu));
  return flexural * solve(model, supports, load).at(grid.node(n / 2, n / 2), uz);
}

// Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, art. 44, to more digits (Kirchhoff plate, series).
constexpr double clamped_centre = 1.26532e-3;

}  // namespace

// Cook 1974, ASCE J Struct Div 100:1851: corners (0, 0) (48, 44) (48, 60) (0, 44), t = 1, E = 1, nu = 1/3, plane
// stress, clamped on the left, unit shear on the right. 23.96 at (48, 52) on fine meshes (23.91 to 23.97 are
// quoted).
TEST_CASE("Cook's tapered panel shears as published", "[elements][published]") {
  const auto finest = check_table(
      23.96, Cells::first_diagonal, {{4, 0.953, 0.840}, {8, 0.983, 0.936}, {16, 0.994, 0.977}, {32, 0.998, 0.992}},
      [](int n, Cells cells) {
        const Grid grid{n, n};
        const auto model = structured_shell(
            grid,
            [](double a, double b) {
              return SurfacePoint{
                  {48.0 * a, 44.0 * a + b * (44.0 - 28.0 * a), 0.0}, Eigen::Vector3d::UnitZ(), 1.0};
            },
            cells, solver::isotropic_shell(1.0, 1.0 / 3.0));
        return solve(model, clamped_root(grid), tip_load(grid, uy, 1.0)).at(grid.node(n, n / 2), uy);
      });
  CHECK(finest.quads == Approx(1.0).margin(0.02));
  CHECK(finest.triangles == Approx(1.0).margin(0.02));
}

TEST_CASE("a clamped square plate sags as published", "[elements][published]") {
  const auto finest = check_table(clamped_centre, Cells::first_diagonal,
                                  {{4, 0.957, 0.726}, {8, 0.989, 0.925}, {16, 0.997, 0.982}, {32, 0.999, 0.996}},
                                  [](int n, Cells cells) { return clamped_plate(n, cells); });
  CHECK(finest.quads == Approx(1.0).margin(0.02));
  CHECK(finest.triangles == Approx(1.0).margin(0.02));
}

// The prototype's own random numbers are not known, so its coarse ratios (0.719 and 0.858 at 4) cannot be asked
// for.
TEST_CASE("a clamped square plate sags as published on distorted meshes and with triangles mixed in",
          "[elements][published]") {
  CHECK(clamped_plate(16, Cells::quads, 0.25) / clamped_centre == Approx(0.994).epsilon(0.005));
  CHECK(clamped_plate(32, Cells::quads, 0.25) / clamped_centre == Approx(0.998).epsilon(0.005));
  CHECK(clamped_plate(16, Cells::quads, 0.0, 0.2) / clamped_centre == Approx(0.995).epsilon(0.005));
  CHECK(clamped_plate(32, Cells::quads, 0.0, 0.2) / clamped_centre == Approx(0.998).epsilon(0.005));
}

// Order from three meshes: log2 of the ratio of successive changes.
TEST_CASE("a plate's displacements converge with the square of the element size", "[elements][published]") {
  const double coarse = clamped_plate(8, Cells::quads), middle = clamped_plate(16, Cells::quads),
               fine = clamped_plate(32, Cells::quads);
  CHECK(std::log2((middle - coarse) / (fine - middle)) == Approx(2.0).margin(0.2));
}

}  // namespace gapstrain::tests
