// Patch tests on five distorted elements: MacNeal & Harder 1985, Finite Elem Anal Des 1:3, plate 0.24 x 0.12, t =
// 0.001, E = 1e6, nu = 0.25, inner nodes (0.04, 0.02) (0.18, 0.03) (0.16, 0.08) (0.08, 0.08). Displacements are
// prescribed at the four corners; the inner nodes must follow the linear (membrane) or quadratic (bending) field
// to round-off, with quads, triangles of either splitting, or both mixed. The transverse-shear patch is the quad's
// alone: the triangle's free bubble rotation relaxes it.
//
// Exact stress: sx = sy = 1333.3, txy = 400 in the membrane; mx = my = 1.111e-7, mxy = 3.333e-8 in bending (the
// paper prints 1e-7 for mxy; E t^3/(12 (1 - nu^2)) (1 - nu) * 0.5e-3 gives the value here).
#include "small_model.h"

#include <Eigen/Geometry>

#include <catch2/catch.hpp>

#include <cmath>
#include <functional>

namespace gapstrain::tests {

namespace {

enum class Cut { quads, triangles, triangles_other_way, mixed };

constexpr double patch_thickness = 0.001;

ShellModel patch(Cut cut, const solver::ShellMaterial& material) {
  ShellModel model;
  model.material = material;
  model.axis_1 = {std::cos(0.5), std::sin(0.5), 0.0};
  model.nodes = {{0.0, 0.0, 0.0},   {0.24, 0.0, 0.0},  {0.24, 0.12, 0.0}, {0.0, 0.12, 0.0},
                 {0.04, 0.02, 0.0}, {0.18, 0.03, 0.0}, {0.16, 0.08, 0.0}, {0.08, 0.08, 0.0}};
  model.directors.assign(8, Eigen::Vector3d::UnitZ());
  model.thickness.assign(8, patch_thickness);
  const std::vector<std::array<int, 4>> cells = {
      {0, 1, 5, 4}, {1, 2, 6, 5}, {2, 3, 7, 6}, {3, 0, 4, 7}, {4, 5, 6, 7}};
  for (std::size_t k = 0; k < cells.size(); ++k) {
    const auto [a, b, c, d] = cells[k];
    if (cut == Cut::quads || (cut == Cut::mixed && k % 2 == 0)) {
      model.quads.push_back(cells[k]);
    } else if (cut == Cut::triangles_other_way) {
      model.triangles.push_back({a, b, d});
      model.triangles.push_back({b, c, d});
    } else {
      model.triangles.push_back({a, b, c});
      model.triangles.push_back({a, c, d});
    }
  }
  return model;
}

using Field = std::function<Eigen::Matrix<double, 6, 1>(double x, double y)>;

// MacNeal & Harder's u = 1e-3 (x + y/2), v = 1e-3 (y + x/2), and a turn of 2e-4 on top so that drilling is not
// zero.
Eigen::Matrix<double, 6, 1> stretch(double x, double y) {
  constexpr double turn = 2e-4;
  Eigen::Matrix<double, 6, 1> motion;
  motion << 1e-3 * (x + y / 2.0) - turn * y, 1e-3 * (y + x / 2.0) + turn * x, 0.0, 0.0, 0.0, turn;
  return motion;
}

// w = 1e-3 (x^2 + x y + y^2)/2 with theta_x = w,y and theta_y = -w,x.
Eigen::Matrix<double, 6, 1> bend(double x, double y) {
  Eigen::Matrix<double, 6, 1> motion;
  motion << 0.0, 0.0, 1e-3 * (x * x + x * y + y * y) / 2.0, 1e-3 * (x / 2.0 + y), -1e-3 * (x + y / 2.0), 0.0;
  return motion;
}

Eigen::VectorXd exact(const ShellModel& model, const Field& field) {
  Eigen::VectorXd result(model.unknowns());
  for (std::size_t i = 0; i < model.nodes.size(); ++i)
    result.segment<6>(6 * static_cast<Eigen::Index>(i)) = field(model.nodes[i].x(), model.nodes[i].y());
  return result;
}

// Largest error of inner displacements and of inner rotations, each relative to the largest of its kind.
double inner_error(const ShellModel& model, const Field& field, const Answer& answer) {
  const Eigen::VectorXd expected = exact(model, field);
  double worst = 0.0;
  for (const int first : {0, 3}) {
    double largest = 0.0, error = 0.0;
    for (int node = 0; node < 8; ++node) {
      largest = std::max(largest, expected.segment<3>(6 * node + first).cwiseAbs().maxCoeff());
      error = std::max(error, (answer.displacement - expected).segment<3>(6 * node + first).cwiseAbs().maxCoeff());
    }
    worst = std::max(worst, error / largest);
  }
  return worst;
}

Answer solve_patch(const ShellModel& model, const Field& field) {
  Supports supports;
  for (int corner = 0; corner < 4; ++corner) {
    const auto& place = model.nodes[static_cast<std::size_t>(corner)];
    const auto motion = field(place.x(), place.y());
    for (const Motion m : {ux, uy, uz, rx, ry, rz}) supports.prescribe(corner, m, motion(m));
  }
  return solve(model, supports, Eigen::VectorXd::Zero(model.unknowns()));
}

// (s11, s22, s12) in material axes turned back to x and y.
Eigen::Vector3d in_global_axes(const Eigen::Vector3d& stress, double angle) {
  const double c = std::cos(angle), s = std::sin(angle);
  return {stress(0) * c * c + stress(1) * s * s - 2.0 * stress(2) * s * c,
          stress(0) * s * s + stress(1) * c * c + 2.0 * stress(2) * s * c,
          (stress(0) - stress(1)) * s * c + stress(2) * (c * c - s * s)};
}

std::vector<Eigen::Vector3d> stresses(const ShellModel& model, const Answer& answer, double zeta) {
  std::vector<Eigen::Vector3d> result;
  for (std::size_t k = 0; k < model.quads.size(); ++k) {
    Eigen::Matrix<double, 24, 1> local;
    for (int i = 0; i < 4; ++i)
      local.segment<6>(6 * i) = answer.displacement.segment<6>(6 * model.quads[k][static_cast<std::size_t>(i)]);
    for (const double xi : {-1.0, 1.0})
      for (const double eta : {-1.0, 1.0})
        result.emplace_back(solver::quad_stress(quad_shape(model, k), model.material, xi, eta, zeta) * local);
  }
  for (std::size_t k = 0; k < model.triangles.size(); ++k) {
    Eigen::Matrix<double, 18, 1> local;
    for (int i = 0; i < 3; ++i)
      local.segment<6>(6 * i) =
          answer.displacement.segment<6>(6 * model.triangles[k][static_cast<std::size_t>(i)]);
    result.emplace_back(solver::triangle_stress(triangle_shape(model, k), model.material, zeta) * local);
  }
  return result;
}

const auto every_cut = {Cut::quads, Cut::triangles, Cut::triangles_other_way, Cut::mixed};

}  // namespace

TEST_CASE("five distorted elements reproduce a constant membrane strain", "[elements][patch]") {
  const auto cut = GENERATE(values(every_cut));
  CAPTURE(static_cast<int>(cut));
  const auto isotropic = patch(cut, solver::isotropic_shell(1e6, 0.25));
  const auto answer = solve_patch(isotropic, stretch);
  CHECK(inner_error(isotropic, stretch, answer) < 1e-10);
  for (const auto& stress : stresses(isotropic, answer, 0.0)) {
    const Eigen::Vector3d global = in_global_axes(stress, 0.5);
    CHECK((global - Eigen::Vector3d(4000.0 / 3.0, 4000.0 / 3.0, 400.0)).cwiseAbs().maxCoeff() < 1e-10 * 1333.0);
  }
  const auto turned = patch(cut, solver::orthotropic_shell(17000.0, 11000.0, 0.4, 3300.0, 3100.0, 2700.0));
  CHECK(inner_error(turned, stretch, solve_patch(turned, stretch)) < 1e-10);
}

TEST_CASE("five distorted elements reproduce a constant curvature", "[elements][patch]") {
  const auto cut = GENERATE(values(every_cut));
  CAPTURE(static_cast<int>(cut));
  const auto isotropic = patch(cut, solver::isotropic_shell(1e6, 0.25));
  const auto answer = solve_patch(isotropic, bend);
  CHECK(inner_error(isotropic, bend, answer) < 1e-10);
  // The director's face is compressed where the plate curves towards it: s = -6 m / t^2.
  for (const auto& stress : stresses(isotropic, answer, 1.0)) {
    const Eigen::Vector3d global = in_global_axes(stress, 0.5);
    CHECK((global - Eigen::Vector3d(-2.0 / 3.0, -2.0 / 3.0, -0.2)).cwiseAbs().maxCoeff() < 1e-10);
  }
  const auto turned = patch(cut, solver::orthotropic_shell(17000.0, 11000.0, 0.4, 3300.0, 3100.0, 2700.0));
  CHECK(inner_error(turned, bend, solve_patch(turned, bend)) < 1e-10);
}

// w = x + y/2 with theta = 0 has shear strains 1 and 1/2 everywhere: u.K u = 5/6 G t (1 + 1/4) A.
TEST_CASE("distorted quads carry a constant transverse shear", "[elements][patch]") {
  const auto model = patch(Cut::quads, solver::isotropic_shell(1e6, 0.25));
  const Eigen::VectorXd motion = exact(model, [](double x, double y) {
    Eigen::Matrix<double, 6, 1> field = Eigen::Matrix<double, 6, 1>::Zero();
    field(uz) = x + y / 2.0;
    return field;
  });
  const double shear_modulus = 1e6 / 2.5, area = 0.24 * 0.12;
  CHECK(motion.dot(assemble_stiffness(model) * motion) ==
        Approx(5.0 / 6.0 * shear_modulus * patch_thickness * 1.25 * area).epsilon(1e-12));
}

// A bowl of quads and triangles with random tilts of the directors: all six rigid motions at once.
TEST_CASE("a rigid motion of a curved, distorted, mixed mesh gives no force", "[elements][laws]") {
  auto model = patch(Cut::mixed, solver::orthotropic_shell(17000.0, 11000.0, 0.4, 3300.0, 3100.0, 2700.0));
  for (std::size_t i = 0; i < model.nodes.size(); ++i) {
    auto& place = model.nodes[i];
    place *= 100.0;
    place.z() = 0.02 * place.x() * place.x() + 0.013 * place.x() * place.y();
    const double tilt = 0.1 * std::sin(3.0 * static_cast<double>(i));
    model.directors[i] = Eigen::Vector3d(-0.04 * place.x() + tilt, -0.013 * place.x(), 1.0).normalized();
    model.thickness[i] = 2.0 + tilt;
  }
  const auto stiffness = assemble_stiffness(model);
  const Eigen::Vector3d shift(0.3, -0.8, 0.5), turn(0.6, 0.9, -0.4);
  Eigen::VectorXd motion(model.unknowns());
  for (std::size_t i = 0; i < model.nodes.size(); ++i) {
    motion.segment<3>(6 * static_cast<Eigen::Index>(i)) = shift + turn.cross(model.nodes[i]);
    motion.segment<3>(6 * static_cast<Eigen::Index>(i) + 3) = turn;
  }
  const double scale = stiffness.coeffs().cwiseAbs().maxCoeff() * motion.cwiseAbs().maxCoeff();
  CHECK((stiffness * motion).cwiseAbs().maxCoeff() < 1e-13 * scale);
}

}  // namespace gapstrain::tests
