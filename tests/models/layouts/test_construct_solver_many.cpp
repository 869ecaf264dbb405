// The same as test_construct_solver on many layouts of a bridged shaft, against everything that a single analysis
// does for one of them: minutes, so it has a command of its own.
#include "models/layouts/construct_solver.h"
#include "models/layouts/layouts.h"
#include "models/layouts/ready_screws.h"
#include "models/preparation/from_scratch.h"
#include "models/preparation/prepare_bodies.h"
#include "tests/models/constructs.h"
#include "tests/models/layouts/long_way.h"

#include <catch2/catch.hpp>

#include <random>

namespace gapstrain {

using namespace models;  // NOLINT: this file is nothing but constructs

namespace {

// A shaft of 190 mm, bridged by a plate of twelve holes.
Construct bridged_shaft() {
  tests::TubeSizes sizes;
  sizes.inner = 9.6;
  sizes.length = 190.0;
  sizes.gap = 5.0;
  sizes.plate_length = 138.0;
  sizes.plate_width = 10.0;
  sizes.plate_thickness = 3.2;
  sizes.holes_a_side = 6;
  sizes.first_hole = 5.75;
  sizes.pitch = 11.5;
  sizes.hole = 3.6;
  sizes.core = 2.9;
  sizes.standoff = 1.0;
  sizes.metal_modulus = 190000.0;
  sizes.screws = {1, 4, 5};
  Construct construct = tests::plated_tube(sizes);
  only(construct.fractures).position += 0.7 * mm;  // no two holes are alike
  construct.mesh.refinement = 0.5;
  LayoutRules rules;
  rules.least_per_fragment = 2;
  rules.most_per_fragment = 4;
  rules.kinds = {ScrewKind::locking};
  construct.layouts = rules;
  return construct;
}

std::vector<Screw> screws_of(const Layouts& layouts, std::size_t row) {
  std::vector<Screw> screws;
  for (const int index : layouts.chosen(row))
    screws.push_back(layouts.candidates()[static_cast<std::size_t>(index)]);
  return screws;
}

// Work is no finding.
Outcome without_work(Outcome outcome) {
  for (auto& load : outcome.loads) load.work = 0.0;
  return outcome;
}

void check_layouts(const Construct& construct, int count, bool mesh_anew) {
  const Layouts layouts(construct);
  Assembly assembly = assemble(construct, layouts.candidates());
  const PeakStress peak(assembly, PlatePlaces::likely);
  std::mt19937 random(11);
  for (int k = 0; k < count; ++k) {
    const std::size_t row = std::uniform_int_distribution<std::size_t>(0, layouts.size() - 1)(random);
    ConstructSolver solver(assembly, peak);
    const Outcome outcome = without_work(solver.solve(layouts.chosen(row)));
    CHECK(outcome.doubts.empty());
    Construct alone = construct;
    alone.screws = assembly.construct.screws = screws_of(layouts, row);
    const Findings findings = (mesh_anew ? analyse(alone) : analyse(assembly)).findings;
    assembly.construct.screws = construct.screws;
    const auto difference = tests::difference(outcome, tests::outcome_of(findings, alone));
    CAPTURE(k, row, difference.figure);
    CHECK(difference.value < 1e-8);
    CHECK(findings.trust.passed());
  }
}

}  // namespace

TEST_CASE("two hundred random layouts have the outcomes of their analyses", "[models][studies][slow]") {
  check_layouts(bridged_shaft(), 200, false);
}

TEST_CASE("ten random layouts have the outcomes of analyses that mesh anew", "[models][studies][slow]") {
  check_layouts(bridged_shaft(), 10, true);
}

TEST_CASE("twenty layouts that touch have the outcomes of their analyses", "[models][studies][slow]") {
  Construct construct = bridged_shaft();
  only(construct.fractures).gap = 0.03 * mm;
  only(construct.plates).standoff = 0.01 * mm;
  check_layouts(construct, 20, false);
}

}  // namespace gapstrain
