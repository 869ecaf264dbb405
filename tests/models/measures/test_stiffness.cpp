// What a construct's stiffness is told for: loads of stated size, with what touches under them.
#include "models/measures/solve.h"
#include "models/measures/stiffness.h"
#include "models/preparation/prepare_bodies.h"
#include "tests/models/constructs.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace gapstrain {

using namespace models;  // NOLINT: this file is nothing but stiffness

namespace {

// EA/L of the unbroken tube of 14 and 9 mm, 160 mm long.
const double unbroken = 17000.0 * std::numbers::pi / 4.0 * (14.0 * 14.0 - 9.0 * 9.0) / 160.0;

Construct tube_with_gap(double gap, double axial = 100.0) {
  tests::TubeSizes sizes;
  sizes.gap = gap;
  Construct construct = tests::plated_tube(sizes);
  construct.loads.resize(1);
  construct.loads[0].axial_compression = axial * newton;
  construct.mesh.refinement = 0.5;
  return construct;
}

struct Made {
  Assembly assembly;
  ConstructState state;
  explicit Made(const Construct& construct)
      : assembly(assemble(construct, construct.screws)),
        state(carry_out(assembly, procedure_of(construct, chosen_screws(assembly, construct.screws))).back()) {}
  StiffnessFindings stiffness() const { return measure_stiffness(assembly, state); }
};

}  // namespace

TEST_CASE("a fracture that is reduced and not pressed is as stiff in compression as the bone it makes whole",
          "[models][findings][stiffness]") {
  const Made reduced(tube_with_gap(0.0));
  REQUIRE(reduced.state.pressed.pressure.sum() == 0.0);
  const StiffnessFindings stiffness = reduced.stiffness();
  CHECK(stiffness.with_contact);
  CHECK(stiffness.axial.value() > 0.97 * unbroken);
  CHECK(stiffness.axial.value() < 1.6 * unbroken);  // the plate bears some of it
  const StiffnessFindings open = Made(tube_with_gap(3.0)).stiffness();
  CHECK(open.axial.value() < 0.04 * unbroken);
  // The unbroken tube turns by M L / E I between balls, and the plate only helps.
  constexpr double inertia = std::numbers::pi / 64.0 * (14.0 * 14.0 * 14.0 * 14.0 - 9.0 * 9.0 * 9.0 * 9.0);
  const double bent = 17000.0 * inertia / 160.0;
  for (const auto& bending : {stiffness.bending_y, stiffness.bending_z}) {
    CHECK(bending.value() > 0.97 * bent);
    CHECK(bending.value() < 2.5 * bent);
  }
  CHECK(open.bending_y.value() < 0.2 * bent);
  // Friction of pressed faces carries torsion: G J / L.
  const double twisted = 17000.0 / 2.6 * 2.0 * inertia / 160.0;
  CHECK(stiffness.torsion.value() > 0.97 * twisted);
}

TEST_CASE("stiffness of a reduced fracture is the same for loads of any size, of a narrow gap it is not",
          "[models][findings][stiffness]") {
  const StiffnessFindings small = Made(tube_with_gap(0.0, 10.0)).stiffness(),
                          large = Made(tube_with_gap(0.0, 400.0)).stiffness();
  CHECK(small.force.value() == 10.0);
  CHECK(large.force.value() == 400.0);
  CHECK(small.axial.value() == Approx(large.axial.value()).epsilon(1e-6));
  CHECK(small.bending_y.value() == Approx(large.bending_y.value()).epsilon(1e-6));
  const StiffnessFindings barely = Made(tube_with_gap(0.05, 1.0)).stiffness(),
                          closing = Made(tube_with_gap(0.05, 400.0)).stiffness();
  CHECK_FALSE(barely.with_contact);
  CHECK(closing.with_contact);
  CHECK(closing.axial.value() > 3.0 * barely.axial.value());
}

TEST_CASE("the stiffness of a gap that stays open is that for small loads, to the digit",
          "[models][findings][stiffness]") {
  const Made open(tube_with_gap(3.0));
  const StiffnessFindings stiffness = open.stiffness();
  CHECK_FALSE(stiffness.with_contact);
  const auto motion_under = [&](std::size_t k) {
    const AssembledLoad& load = open.assembly.stiffness_loads[k];
    const auto answer = solve_small_load(open.assembly, open.state, load);
    double work = 0.0;
    for (std::size_t b = 0; b < load.forces.size(); ++b)
      work += load.forces[b].cwiseProduct(answer.motions[b]).sum();
    return work;
  };
  CHECK(stiffness.axial.value() == Approx(1.0 / motion_under(0)).epsilon(1e-13));
  CHECK(stiffness.bending_y.value() == Approx(1.0 / motion_under(1)).epsilon(1e-13));
  CHECK(stiffness.bending_z.value() == Approx(1.0 / motion_under(2)).epsilon(1e-13));
  CHECK(stiffness.torsion.value() == Approx(1.0 / motion_under(3)).epsilon(1e-13));
}

TEST_CASE("bending and torsion are told in the softer sense, under the axial load",
          "[models][findings][stiffness]") {
  Construct construct = tube_with_gap(0.02);
  construct.loads[0].ball_offset_y = 1.0 * mm;
  const Made nearly(construct);
  const StiffnessFindings stiffness = nearly.stiffness();
  const auto under = [&](std::size_t unit, double moment) {
    AssembledLoad load = nearly.assembly.stiffness_loads[0];
    for (std::size_t b = 0; b < load.forces.size(); ++b)
      load.forces[b] = 100.0 * load.forces[b] + moment * nearly.assembly.stiffness_loads[unit].forces[b];
    return solve_load(nearly.assembly, nearly.state, load).pressed.solution.motions;
  };
  for (const std::size_t unit : {1U, 2U, 3U}) {
    const auto at_rest = under(unit, 0.0);
    const auto of_sense = [&](double moment) {
      const auto motions = under(unit, moment);
      double turn = 0.0;
      for (std::size_t b = 0; b < motions.size(); ++b)
        turn += nearly.assembly.stiffness_loads[unit].forces[b].cwiseProduct(motions[b] - at_rest[b]).sum();
      return moment / turn;
    };
    const double softer = std::min(of_sense(175.0), of_sense(-175.0));  // 100 N, 1.75 mm off the axis
    const double told = std::array{stiffness.bending_y, stiffness.bending_z, stiffness.torsion}[unit - 1].value();
    CHECK(told == Approx(softer).epsilon(1e-6));
  }
  CHECK(stiffness.with_contact);
}

TEST_CASE("a construct without axial load is told for its largest other one", "[models][findings][stiffness]") {
  Construct construct = tube_with_gap(3.0);
  construct.loads[0].axial_compression = 0.0 * newton;
  construct.loads[0].bending_y = -700.0 * newton_mm;
  CHECK(Made(construct).stiffness().force.value() == Approx(100.0));  // over 7 mm
  construct.loads[0].bending_y = 0.0 * newton_mm;
  construct.loads[0].transverse_z = -30.0 * newton;
  construct.loads[0].supports = cantilever();
  CHECK(Made(construct).stiffness().force.value() == Approx(30.0));
}

}  // namespace gapstrain
