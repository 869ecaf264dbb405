// Stress concentration of one round hole at the default rim mesh of 48 elements.
//
// Tension: finite strip, peak over gross stress. Heywood 1952, Designing by Photoelasticity:
// Kt = (2 + 0.284 c - 0.6 c^2 + 1.32 c^3) / c with c = 1 - d/W; Howland 1930, Phil Trans R Soc A 229:49, table
// values. Bending: wide plate, peak over the far surface stress, by hole radius over thickness. Reissner 1945, J
// Appl Mech 12:A69: Kt = 3/2 + (3/2 (1 + steel_ratio) K2(mu) - K0(mu)) / ((1 + steel_ratio) K2(mu) + 2 K0(mu)), mu
// = (d/2) sqrt(10) / t. Tolerance 3 %: the mesh's own error at 48 elements is 1 to 3 % on the low side.
#include "mesh/perforated_plate.h"
#include "mesh/roll_up.h"
#include "solver/bodies/body.h"
#include "solver/bodies/stress.h"

#include <catch2/catch.hpp>

#include <cmath>

namespace gapstrain {

namespace {

constexpr double steel_modulus = 186000.0, steel_ratio = 0.3;

struct Loading {
  double force = 0.0;   // N per mm of width, along x
  double moment = 0.0;  // N mm per mm of width, stretching the top face
};

// Peak von Mises stress at the rim of a hole in the middle of a bar under even end loads.
double rim_peak(double length, double width, double thickness, double diameter, const Loading& loading) {
  const mesh::GmshSession session;
  mesh::PerforatedPlate plate;
  plate.length = length;
  plate.widths = {{0.0, width}};
  plate.holes = {{length / 2.0, diameter, diameter}};
  plate.size_max = width / 7.0;
  const auto flat = mesh::mesh_perforated_plate(session, plate);
  const solver::Shell shell{std::make_shared<mesh::ShellMesh>(mesh::roll_up(
                                flat,
                                [&](double x, double y) {
                                  return mesh::SurfacePoint{{x, y, 0.0}, {0.0, 0.0, 1.0}, thickness};
                                },
                                0.0)),
                            solver::isotropic_shell(steel_modulus, steel_ratio)};
  const auto& mesh = *shell.mesh;
  Eigen::MatrixXd forces = Eigen::MatrixXd::Zero(shell.unknowns(), 1);
  for (const auto& [end, sign] : {std::pair{"end:0", -1.0}, std::pair{"end:1", 1.0}}) {
    const auto& line = mesh.groups.at(end);
    for (std::size_t k = 0; k + 1 < line.size(); ++k) {
      const double half = 0.5 * (mesh.nodes(line[k + 1], 1) - mesh.nodes(line[k], 1));
      for (const int node : {line[k], line[k + 1]}) {
        forces(6 * node, 0) += sign * half * loading.force;
        forces(6 * node + 4, 0) += sign * half * loading.moment;
      }
    }
  }
  const solver::Body body(shell);
  const Eigen::VectorXd displacements = body.elastic_answer(forces);
  double peak = 0.0;
  for (const double zeta : {-1.0, 0.0, 1.0})
    peak = std::max(
        peak, solver::von_mises(
                  solver::as_rows(solver::node_stress_rows(shell, mesh.groups.at("hole:0"), zeta) * displacements))
                  .maxCoeff());
  return peak;
}

double heywood(double d_over_w) {
  const double c = 1.0 - d_over_w;
  return (2.0 + 0.284 * c - 0.6 * c * c + 1.32 * c * c * c) / c;
}

double reissner(double radius_over_thickness) {
  const double mu = radius_over_thickness * std::sqrt(10.0);
  const double k0 = std::cyl_bessel_k(0.0, mu), k2 = std::cyl_bessel_k(2.0, mu);
  return 1.5 + (1.5 * (1.0 + steel_ratio) * k2 - k0) / ((1.0 + steel_ratio) * k2 + 2.0 * k0);
}

}  // namespace

TEST_CASE("a hole in a stretched strip peaks as Heywood and Howland say", "[solver][published][hole]") {
  struct Case {
    double d_over_w, howland;
  };
  const auto strip = GENERATE(Case{0.2, 3.14}, Case{0.3, 3.36}, Case{0.4, 3.74}, Case{0.5, 4.32});
  const double width = 12.0, thickness = 4.0, stress = 73.0;
  const double peak = rim_peak(72.0, width, thickness, strip.d_over_w * width, {stress * thickness, 0.0}) / stress;
  CAPTURE(strip.d_over_w, peak);
  CHECK(peak == Approx(strip.howland).epsilon(0.03));
  CHECK(peak == Approx(heywood(strip.d_over_w)).epsilon(0.03));
}

TEST_CASE("a hole in a bent wide plate peaks as Reissner's theory says, by its thickness",
          "[solver][published][hole]") {
  const double thickness = GENERATE(2.0, 3.0, 4.0, 8.0);
  const double diameter = 5.0, stress = 61.0;
  const double peak =
      rim_peak(120.0, 120.0, thickness, diameter, {0.0, stress * thickness * thickness / 6.0}) / stress;
  CAPTURE(thickness, peak);
  CHECK(peak == Approx(reissner(diameter / 2.0 / thickness)).epsilon(0.03));
}

}  // namespace gapstrain
