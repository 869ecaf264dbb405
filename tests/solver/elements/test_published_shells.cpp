// Thin shells of the customary "obstacle course": Belytschko et al. 1985, Comput Methods Appl Mech Eng 51:221;
// MacNeal & Harder 1985, Finite Elem Anal Des 1:3. Symmetric parts with n x n elements.
#include "published_table.h"

#include <cmath>
#include <numbers>

namespace gapstrain::tests {

namespace {

using std::numbers::pi;

// Cylinder about x with a over the length and b over the angle from the top.
auto cylinder(double radius, double length, double angle, double thickness) {
  return [=](double a, double b) {
    const Eigen::Vector3d director(0.0, std::sin(angle * b), std::cos(angle * b));
    return SurfacePoint{Eigen::Vector3d(length * a, 0.0, 0.0) + radius * director, director, thickness};
  };
}

// A quarter: symmetric about mid-length x = 0 and about the plane y = 0, diaphragm at the far end.
Supports roof_supports(const Grid& grid) {
  Supports supports;
  for (int k = 0; k <= grid.rows; ++k) {
    supports.hold(grid.node(0, k), {ux, ry, rz});
    supports.hold(grid.node(grid.columns, k), {uy, uz});
  }
  for (int k = 0; k <= grid.columns; ++k) supports.hold(grid.node(k, 0), {uy, rx, rz});
  return supports;
}

}  // namespace

// Scordelis & Lo 1964, J ACI 61:539: R = 25, L = 50, half angle 40 degrees, t = 0.25, E = 4.32e8, nu = 0, 90 per
// area downwards. Free edge at mid-span: 0.3024 is the value that shear-flexible shells reach (MacNeal & Harder);
// 0.3086 of the original deep-shell theory is 2 % high, Kirchhoff-Love gives 0.3006.
TEST_CASE("the Scordelis-Lo roof sags as published", "[elements][published]") {
  const auto finest = check_table(
      0.3024, Cells::first_diagonal,
      {{4, 1.055, 0.952}, {8, 1.008, 0.977}, {16, 0.998, 0.991}, {32, 0.997, 0.995}}, [](int n, Cells cells) {
        const Grid grid{n, n};
        const auto material = solver::isotropic_shell(4.32e8, 0.0);
        const auto roof = cylinder(25.0, 25.0, 40.0 * pi / 180.0, 0.25);
        const auto load = even_load(structured_shell(grid, roof, Cells::quads, material), {0.0, 0.0, -90.0});
        return -solve(structured_shell(grid, roof, cells, material), roof_supports(grid), load)
                    .at(grid.node(0, n), uz);
      });
  CHECK(finest.quads == Approx(1.0).margin(0.02));
  CHECK(finest.triangles == Approx(1.0).margin(0.02));
}

// Lindberg, Olson & Cowper 1969, NRC Canada Quarterly Bulletin: R = 300, L = 600, t = 3, E = 3e6, nu = 0.3, two
// opposite unit loads, end diaphragms; 1.8248e-5 under the load (Fourier series).
TEST_CASE("a pinched cylinder with end diaphragms gives way as published", "[elements][published]") {
  const auto finest = check_table(
      1.8248e-5, Cells::second_diagonal,
      {{8, 0.747, 0.734}, {16, 0.931, 0.914}, {32, 0.989, 0.980}, {48, 1.002, 0.996}}, [](int n, Cells cells) {
        const Grid grid{n, n};
        const auto model = structured_shell(grid, cylinder(300.0, 300.0, pi / 2.0, 3.0), cells,
                                            solver::isotropic_shell(3e6, 0.3));
        auto supports = roof_supports(grid);
        for (int k = 0; k <= n; ++k) supports.hold(grid.node(k, n), {uz, rx, ry});
        Eigen::VectorXd load = Eigen::VectorXd::Zero(model.unknowns());
        load(6 * grid.node(0, 0) + uz) = -0.25;
        return -solve(model, supports, load).at(grid.node(0, 0), uz);
      });
  CHECK(finest.quads == Approx(1.0).margin(0.02));
  CHECK(finest.triangles == Approx(1.0).margin(0.02));
}

// MacNeal & Harder 1985: R = 10, t = 0.04, hole of 18 degrees, E = 6.825e7, nu = 0.3, radial loads of 2 outwards
// and inwards by turns at 90 degrees on the free equator; 0.094 under the load. (0.0924 belongs to the sphere
// without hole.) Our bones have R/t of 2 to 10; at R/t = 250 coarse meshes are late, as the table shows.
TEST_CASE("a pinched hemisphere with a hole opens as published", "[elements][published]") {
  const auto finest = check_table(
      0.094, Cells::first_diagonal, {{4, 0.369, 0.089}, {8, 0.958, 0.492}, {16, 0.993, 0.924}, {32, 0.995, 0.989}},
      [](int n, Cells cells) {
        const Grid grid{n, n};
        const auto sphere = [](double a, double b) {
          const double round = pi / 2.0 * a, up = 72.0 * pi / 180.0 * b;
          const Eigen::Vector3d director(std::cos(up) * std::cos(round), std::cos(up) * std::sin(round),
                                         std::sin(up));
          return SurfacePoint{10.0 * director, director, 0.04};
        };
        const auto model = structured_shell(grid, sphere, cells, solver::isotropic_shell(6.825e7, 0.3));
        Supports supports;
        for (int k = 0; k <= n; ++k) {
          supports.hold(grid.node(0, k), {uy, rx, rz});
          supports.hold(grid.node(n, k), {ux, ry, rz});
        }
        supports.hold(grid.node(0, 0), {uz});
        Eigen::VectorXd load = Eigen::VectorXd::Zero(model.unknowns());
        load(6 * grid.node(0, 0) + ux) = 1.0;
        load(6 * grid.node(n, 0) + uy) = -1.0;
        return solve(model, supports, load).at(grid.node(0, 0), ux);
      });
  CHECK(finest.quads == Approx(1.0).margin(0.02));
  CHECK(finest.triangles == Approx(1.0).margin(0.02));
}

}  // namespace gapstrain::tests
