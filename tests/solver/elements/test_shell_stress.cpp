// Stresses read at the nodes: fields that an element holds exactly, and the surface stress of a cantilever.
#include "structured_shell.h"

#include <catch2/catch.hpp>

#include <cmath>

namespace gapstrain::tests {

namespace {

ShellModel strip(const Grid& grid, double length, double width, double thickness,
                 const solver::ShellMaterial& material) {
  return structured_shell(
      grid,
      [&](double a, double b) {
        return SurfacePoint{{length * a, width * (b - 0.5), 0.0}, Eigen::Vector3d::UnitZ(), thickness};
      },
      Cells::quads, material);
}

}  // namespace

// u = c x y / E, v = -c x^2 / 2E with the turn -c x / E of its middle line has s11 = c y alone when nu = 0.
TEST_CASE("a quad's stresses at its nodes follow in-plane bending exactly", "[elements][stress]") {
  constexpr double modulus = 17000.0, slope = 31.0;
  const Grid grid{3, 2};
  const auto model = strip(grid, 6.3, 3.4, 0.8, solver::isotropic_shell(modulus, 0.0));
  Eigen::VectorXd motion = Eigen::VectorXd::Zero(model.unknowns());
  for (int node = 0; node < grid.count(); ++node) {
    const auto& place = model.nodes[static_cast<std::size_t>(node)];
    motion(6 * node + ux) = slope * place.x() * place.y() / modulus;
    motion(6 * node + uy) = -slope * place.x() * place.x() / (2.0 * modulus);
    motion(6 * node + rz) = -slope * place.x() / modulus;
  }
  for (int node = 0; node < grid.count(); ++node) {
    const Eigen::Vector3d expected(slope * model.nodes[static_cast<std::size_t>(node)].y(), 0.0, 0.0);
    CHECK((averaged_stress(model, motion, node, 0.4) - expected).cwiseAbs().maxCoeff() < 1e-10 * slope);
  }
}

// Uniaxial tension along x read in axes turned by 30 degrees: E eps times c^2, s^2 and -c s.
TEST_CASE("a quad's stresses are given in the material's own axes", "[elements][stress]") {
  constexpr double modulus = 17000.0, nu = 0.3, strain = 2e-3, angle = 0.5236;
  auto model = strip({2, 2}, 6.0, 4.0, 0.8, solver::isotropic_shell(modulus, nu));
  model.axis_1 = {std::cos(angle), std::sin(angle), 0.0};
  Eigen::VectorXd motion = Eigen::VectorXd::Zero(model.unknowns());
  for (std::size_t node = 0; node < model.nodes.size(); ++node) {
    motion(6 * static_cast<int>(node) + ux) = strain * model.nodes[node].x();
    motion(6 * static_cast<int>(node) + uy) = -nu * strain * model.nodes[node].y();
  }
  const double c = std::cos(angle), s = std::sin(angle), axial = modulus * strain;
  const Eigen::Vector3d expected(axial * c * c, axial * s * s, -axial * c * s);
  CHECK((averaged_stress(model, motion, 4, 0.0) - expected).cwiseAbs().maxCoeff() < 1e-12 * axial);
}

// s = 6 F (L - x) / (w t^2), on the director's side in tension where the load pulls the tip down. Away from the
// clamp, where Poisson's contraction is held.
TEST_CASE("a cantilever's surface stress is that of beam theory", "[elements][stress]") {
  constexpr double length = 60.0, width = 10.0, thickness = 3.0, force = 25.0;
  const Grid grid{24, 4};
  const auto model = strip(grid, length, width, thickness, solver::isotropic_shell(186000.0, 0.3));
  const auto answer = solve(model, clamped_root(grid), tip_load(grid, uz, -force));
  for (const int column : {8, 12, 16}) {
    const double expected = 6.0 * force * length * (1.0 - column / 24.0) / (width * thickness * thickness);
    const Eigen::Vector3d top = averaged_stress(model, answer.displacement, grid.node(column, 2), 1.0);
    const Eigen::Vector3d bottom = averaged_stress(model, answer.displacement, grid.node(column, 2), -1.0);
    CHECK(top(0) == Approx(expected).epsilon(0.005));
    CHECK(bottom(0) == Approx(-expected).epsilon(0.005));
    CHECK(averaged_stress(model, answer.displacement, grid.node(column, 2), 0.0).norm() < 1e-9 * expected);
  }
}

}  // namespace gapstrain::tests
