// The estimate of the mesh's error against the error itself, which a finer mesh shows.
//
// The plated tube under axial load, bending and torsion at refinements 0.5, 0.7 and 1.0, against 2.0. Energies
// under a given load grow with refinement; from 2.0 to 2.8 they grow by another 0.02 % under axial load, and the
// peak of stress by 0.1 %, so what 2.0 lacks itself is a few per cent to a fifth of the errors that are looked at.
#include "models/measures/mesh_error.h"
#include "models/stress/plate_stress.h"
#include "tests/models/constructs.h"
#include "tests/models/measures/solved_construct.h"

#include <catch2/catch.hpp>

#include <vector>

namespace gapstrain {

namespace {

using namespace models;

struct AtMesh {
  double energy = 0.0, peak = 0.0;
  MeshError estimate;
};

// Of each load by itself: the estimate is the largest over the loads that it is asked about.
std::vector<AtMesh> solved_at(double refinement) {
  Construct construct = tests::plated_tube();
  construct.mesh.refinement = refinement;
  tests::SolvedConstruct whole = tests::solve_only(construct);
  const auto stress = read_stress(whole.assembly.bodies[only_plate_body].body->shell(),
                                  whole.solved.displacements[only_plate_body]);
  const auto assembled = whole.assembly.loads;
  std::vector<AtMesh> all;
  for (std::size_t l = 0; l < assembled.size(); ++l) {
    whole.assembly.loads = {assembled[l]};
    SolvedLoads alone{{whole.solved.states[l]}, {}};
    for (const auto& body : whole.solved.displacements)
      alone.displacements.emplace_back(body.col(static_cast<Eigen::Index>(l)));
    const solver::Solution& solution = alone.states[0].pressed.solution;
    std::vector<LoadFindings> findings(1);
    findings[0].plate = measure_plate(whole.assembly, whole.chosen, solution, stress[l]);
    all.push_back({solver::energy_balance(*whole.assembly.system, solution, assembled[l].forces).stored(0),
                   findings[0].plate.peak.von_mises.value(),
                   estimate_mesh_error(whole.assembly, alone, findings)});
  }
  return all;
}

}  // namespace

TEST_CASE("the estimated error of the mesh is the error of that mesh, within a factor",
          "[models][findings][trust]") {
  const auto fine = solved_at(2.0);
  REQUIRE(fine.size() == 3);
  std::vector<double> before(fine.size(), 1.0);
  for (const double refinement : {0.5, 0.7, 1.0}) {
    const auto coarse = solved_at(refinement);
    for (std::size_t load = 0; load < fine.size(); ++load) {
      const MeshError& estimate = coarse[load].estimate;
      const double of_energy = 1.0 - coarse[load].energy / fine[load].energy;
      const double of_peak = 1.0 - coarse[load].peak / fine[load].peak;
      CAPTURE(load, refinement, of_energy, of_peak);
      // Measured ratios of estimate to error: 0.6 to 1.8.
      CHECK(estimate.stiffness > 0.5 * of_energy);
      CHECK(estimate.stiffness < 2.0 * of_energy);
      CHECK(estimate.stiffness < before[load]);
      before[load] = estimate.stiffness;
      // The jump at one node knows less: 0.38 to 0.8 under axial load and bending, 2.2 to 2.8 under torsion. So
      // the error of the peak may be three times its estimate.
      CHECK(estimate.peak > of_peak / 3.0);
      CHECK(estimate.peak < 3.0 * of_peak);
    }
  }
}

TEST_CASE("a construct that moves as a whole has no error of its mesh", "[models][findings][trust]") {
  Construct construct = tests::plated_tube();
  construct.loads = {construct.loads[0]};
  construct.mesh.refinement = 0.5;
  tests::SolvedConstruct whole = tests::solve_only(construct);
  whole.loads.resize(1);
  for (std::size_t b = 0; b < 3; ++b)  // a rigid motion
    whole.solved.displacements[b] = whole.assembly.bodies[b].body->rigid().col(4);
  whole.loads[0].plate.peak.von_mises = 100.0 * mpa;
  const MeshError error = estimate_mesh_error(whole.assembly, whole.solved, whole.loads);
  CHECK(error.stiffness < 1e-12);
  CHECK(error.peak < 1e-8);
}

}  // namespace gapstrain
