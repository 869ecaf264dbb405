// Screws in, outcome out, against the long way round: steps, loads, whole fields, findings.
#include "models/assembly/insertion.h"
#include "models/assembly/screw_interface.h"
#include "models/catalogue/outcome_figures.h"
#include "models/findings/model_error.h"
#include "models/layouts/solver_at_bounds.h"
#include "models/measures/solve.h"
#include "models/preparation/prepare_bodies.h"
#include "models/stress/body_stress.h"
#include "models/stress/plate_stress.h"
#include "tests/models/constructs.h"
#include "tests/models/layouts/long_way.h"
#include "tests/models/measures/compression_constructs.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

namespace gapstrain {

using namespace models;  // NOLINT: this file is nothing but constructs

namespace {

// A bench tube with a locking screw in each of its ten holes: all of them candidates.
Construct bench_tube(double gap, double standoff, FrictionLaw friction) {
  tests::TubeSizes sizes;
  sizes.gap = gap;
  sizes.standoff = standoff;
  sizes.screws = {0, 1, 2, 3, 4};
  Construct construct = tests::plated_tube(sizes);
  only(construct.plates).material = find_metal("stainless-steel-cold-worked").value();
  only(construct.plates).finish_factor = 0.9;
  for (auto& screw : construct.screws) screw.material = find_metal("titanium-6al-4v-eli").value();
  // Two loads of a day add up in fatigue; the third is no part of it.
  construct.healing = Healing{};
  construct.healing->weeks_from = 8.0;
  construct.healing->weeks_to = 16.0;
  construct.loads.at(0).cycles_per_day = 900.0;
  construct.loads.at(1).cycles_per_day = 300.0;
  only(construct.fractures).position += 0.4 * mm;  // no two holes are alike
  construct.contact.friction = friction;
  construct.mesh.refinement = 0.4;
  return construct;
}

Assembly assemble_all(const Construct& construct) { return assemble(construct, construct.screws); }

// Positions of candidates, `least` or more on each side of the tube's middle, in random order.
std::vector<int> random_layout(std::mt19937& random, const Assembly& assembly, int least) {
  const std::size_t half = only(assembly.construct.plates).holes.size() / 2;
  std::vector<int> sides[2], chosen;
  for (std::size_t k = 0; k < assembly.screws.size(); ++k)
    sides[static_cast<std::size_t>(assembly.screws[k].planned.screw.hole) > half].push_back(static_cast<int>(k));
  for (auto& side : sides) {
    std::shuffle(side.begin(), side.end(), random);
    std::uniform_int_distribution<int> count(least, static_cast<int>(side.size()));
    chosen.insert(chosen.end(), side.begin(), side.begin() + count(random));
  }
  std::shuffle(chosen.begin(), chosen.end(), random);
  return chosen;
}

std::vector<std::vector<int>> random_layouts(unsigned seed, const Assembly& assembly, int count) {
  std::mt19937 random(seed);
  std::vector<std::vector<int>> layouts;
  for (int k = 0; k < count; ++k) layouts.push_back(random_layout(random, assembly, 2));
  return layouts;
}

// How much touches in the loads of some outcomes: the faces of the fracture, and the plate on the bone.
struct Touching {
  int faces = 0, plate = 0;
  void count(const Outcome& outcome) {
    for (const auto& load : outcome.loads) {
      faces += load.across > 0.0 * newton ? 1 : 0;
      plate += load.plate_pressure > 0.0 * newton ? 1 : 0;
    }
  }
};

Touching check_against_long_way(const Assembly& assembly, const std::vector<std::vector<int>>& layouts) {
  const PeakStress peak(assembly, PlatePlaces::likely);
  ConstructSolver solver(assembly, peak);
  Touching touching;
  for (const auto& chosen : layouts) {
    CAPTURE(chosen);
    const Outcome outcome = solver.solve(chosen), expected = tests::long_way(assembly, chosen);
    const auto difference = tests::difference(outcome, expected);
    CAPTURE(difference.figure);
    CHECK(difference.value < 1e-8);
    touching.count(expected);
  }
  return touching;
}

// Of the whole plate, at every node.
std::vector<PlatePeak> whole_plate_peaks(const Assembly& assembly, const std::vector<int>& chosen) {
  Construct construct = assembly.construct;
  construct.screws.clear();
  for (const int index : chosen)
    construct.screws.push_back(assembly.screws[static_cast<std::size_t>(index)].planned.screw);
  const StepState made = carry_out(assembly, procedure_of(construct, chosen)).back();
  std::vector<PlatePeak> peaks;
  for (const auto& load : assembly.loads) {
    const auto solution = solve_load(assembly, made, load).pressed.solution;
    const auto displacements = recover_displacements(assembly, {solution});
    const auto stress =
        read_stress(assembly.bodies[only_plate_body].body->shell(), displacements[only_plate_body]);
    peaks.push_back(measure_plate(assembly, chosen, solution, stress.front()).peak);
  }
  return peaks;
}

}  // namespace

// Beyond yield the quick way gives up and goes the long one; margins stay those of metals that do not yield.
TEST_CASE("layouts whose screws or plate yield are the same the long way round", "[models][layouts][yield]") {
  for (const auto friction : {FrictionLaw::none, FrictionLaw::coulomb}) {
    Construct construct = bench_tube(3.0, 1.2, friction);
    construct.metal_law = MetalLaw::elastic_plastic;
    for (auto& load : construct.loads) {
      load.axial_compression *= 9.0;
      load.bending_y *= 6.0;
      load.torsion *= 5.0;
    }
    const auto assembly = assemble_all(construct);
    construct.metal_law = MetalLaw::elastic;
    const auto elastic = assemble_all(construct);
    const auto layouts = random_layouts(5, assembly, 6);
    check_against_long_way(assembly, layouts);
    const PeakStress peak(assembly, PlatePlaces::likely), peak_elastic(elastic, PlatePlaces::likely);
    ConstructSolver solver(assembly, peak), solver_elastic(elastic, peak_elastic);
    int softer = 0;
    for (const auto& chosen : layouts) {
      const Outcome outcome = solver.solve(chosen), bound = solver_elastic.solve(chosen);
      for (std::size_t l = 0; l < outcome.loads.size(); ++l) {
        softer += outcome.loads[l].largest_motion > 1.001 * bound.loads[l].largest_motion ? 1 : 0;
        CHECK(outcome.loads[l].peak_stress.value() == Approx(bound.loads[l].peak_stress.value()));
      }
      CHECK(*outcome.margins.screw_fatigue == Approx(*bound.margins.screw_fatigue));
    }
    CHECK(softer > 3);
  }
}

TEST_CASE("a layout's outcome is that of the long way where nothing touches", "[models][studies][solver]") {
  const Assembly assembly = assemble_all(bench_tube(3.0, 1.5, FrictionLaw::coulomb));
  const Touching touching = check_against_long_way(assembly, random_layouts(1, assembly, 12));
  CHECK(touching.faces == 0);
  CHECK(touching.plate == 0);
}

// Both add what axial forces do in the same rounds; the ratio says that they do it.
TEST_CASE("a layout's outcome is that of the long way with second-order effects", "[models][studies][solver]") {
  for (const double gap : {3.0, 0.03}) {
    Construct construct = bench_tube(gap, 0.05, FrictionLaw::coulomb);
    construct.second_order = SecondOrderEffects::automatic;
    construct.loads.at(0).axial_compression *= 2.5;
    const Assembly assembly = assemble_all(construct);
    const auto layouts = random_layouts(7, assembly, 8);
    check_against_long_way(assembly, layouts);
    const PeakStress peak(assembly, PlatePlaces::likely);
    ConstructSolver solver(assembly, peak);
    int bent = 0;
    for (const auto& chosen : layouts) {
      const Outcome outcome = solver.solve(chosen), expected = tests::long_way(assembly, chosen);
      for (std::size_t l = 0; l < outcome.loads.size(); ++l) {
        const auto &one = outcome.loads[l].second_order, &other = expected.loads[l].second_order;
        CAPTURE(gap, chosen, l);
        REQUIRE(one.load_ratio.has_value() == other.load_ratio.has_value());
        REQUIRE(one.amplification.has_value() == other.amplification.has_value());
        if (one.load_ratio) CHECK(*one.load_ratio == Approx(*other.load_ratio).epsilon(1e-8));
        if (!one.amplification) continue;
        ++bent;
        CHECK(*one.amplification > 1.04);
        CHECK(*one.amplification == Approx(*other.amplification).epsilon(1e-8));
      }
    }
    if (gap > 1.0) CHECK(bent > 4);
  }
}

TEST_CASE("a layout's outcome is that of the long way where the gap closes and the plate touches the bone",
          "[models][studies][solver]") {
  const auto friction = GENERATE(FrictionLaw::none, FrictionLaw::coulomb, FrictionLaw::stick);
  CAPTURE(friction);
  const Assembly assembly = assemble_all(bench_tube(0.03, 0.01, friction));
  const Touching touching = check_against_long_way(assembly, random_layouts(2, assembly, 12));
  CHECK(touching.faces > 6);
  CHECK(touching.plate > 6);
}

TEST_CASE("a layout's outcome is that of the long way with tissue in the gap, wires and screws in steps",
          "[models][studies][solver]") {
  Construct construct = bench_tube(3.0, 0.01, FrictionLaw::coulomb);
  only(construct.fractures).tissue = Tissue{"early", 1.0 * mpa, 0.3, "made up for tests"};
  TemporaryHold wire;
  wire.label = "W";
  wire.kind = HoldKind::wire;
  wire.hole = 10;
  wire.diameter = 2.0 * mm;
  construct.temporary = {wire};
  construct.screws.pop_back();  // of the wire's hole
  construct.steps = tests::steps_of({"+W", "S3", "S7", "S1", "-W", "S9"});
  construct.steps[3].tissue = Tissue{"late", 50.0 * mpa, 0.3, "made up for tests"};
  const Assembly assembly = assemble_all(construct);
  const Touching touching = check_against_long_way(assembly, random_layouts(3, assembly, 6));
  CHECK(touching.plate > 3);
}

TEST_CASE("a layout's outcome is that of the long way with ball heads tightened one after another",
          "[models][studies][solver]") {
  Construct construct = tests::pressed_tube();
  construct.mesh.refinement = 0.4;
  only(construct.fractures).position += 0.4 * mm;
  const Assembly assembly = assemble_all(construct);
  const Touching touching = check_against_long_way(assembly, random_layouts(4, assembly, 4));
  CHECK(touching.plate == 12);
}

TEST_CASE("layouts at rest and layouts with a ball head may be solved in turn", "[models][studies][solver]") {
  Construct construct = bench_tube(0.03, 0.01, FrictionLaw::coulomb);
  Screw& screw = construct.screws[3];
  screw.kind = ScrewKind::cortical;
  screw.preload = 150.0 * newton;
  const Assembly assembly = assemble_all(construct);
  const auto layouts = random_layouts(9, assembly, 12);
  const auto has_ball_head = [](const std::vector<int>& chosen) {
    return std::find(chosen.begin(), chosen.end(), 3) != chosen.end();
  };
  const auto with = std::count_if(layouts.begin(), layouts.end(), has_ball_head);
  REQUIRE(with > 1);
  REQUIRE(with < 11);
  check_against_long_way(assembly, layouts);
}

TEST_CASE("a layout's outcome is that of the long way with steps that press the fragments together",
          "[models][studies][solver]") {
  Construct construct = tests::compression_tube();
  construct.mesh.refinement = 0.4;
  construct.contact.friction = GENERATE(FrictionLaw::none, FrictionLaw::coulomb);
  construct.steps = tests::steps_of({"P1", "+W", "C!", "-W", "L"});
  const Assembly assembly = assemble_all(construct);
  // No step names P2; the last layouts leave out what steps name.
  const Touching touching = check_against_long_way(assembly, {{0, 1, 2, 3}, {3, 2, 1, 0}, {0, 2, 3}, {1, 2, 3}});
  CHECK(touching.faces > 8);
}

TEST_CASE("an outcome does not depend on what was solved before", "[models][studies][solver]") {
  const Assembly assembly = assemble_all(bench_tube(0.03, 0.01, FrictionLaw::coulomb));
  const PeakStress peak(assembly, PlatePlaces::likely);
  const auto layouts = random_layouts(5, assembly, 12);
  std::vector<Outcome> alone;
  for (const auto& chosen : layouts) alone.push_back(ConstructSolver(assembly, peak).solve(chosen));
  ConstructSolver solver(assembly, peak);
  std::mt19937 random(6);
  std::vector<std::size_t> order;
  for (std::size_t k = 0; k < layouts.size(); ++k) order.insert(order.end(), 2, k);
  std::shuffle(order.begin(), order.end(), random);
  for (const std::size_t k : order) {
    CAPTURE(layouts[k]);
    CHECK(tests::same_bits(solver.solve(layouts[k]), alone[k]));
    // Nor on a layout that could not be solved, just before.
    if (k % 4 == 0) CHECK_THROWS_AS(solver.solve({layouts[k].front()}), ModelError);
  }
}

TEST_CASE("the order of screws that lock leaves no trace but rounding", "[models][studies][solver]") {
  const Assembly assembly = assemble_all(bench_tube(0.03, 0.01, FrictionLaw::coulomb));
  const PeakStress peak(assembly, PlatePlaces::likely);
  ConstructSolver solver(assembly, peak);
  for (auto chosen : random_layouts(7, assembly, 6)) {
    const Outcome outcome = solver.solve(chosen);
    std::sort(chosen.begin(), chosen.end());
    const auto difference = tests::difference(solver.solve(chosen), outcome);
    CAPTURE(chosen, difference.figure);
    CHECK(difference.value < 1e-8);
  }
}

TEST_CASE("a row's figures at the soft bound are those of the construct with soft screws, the long way round",
          "[models][studies][solver]") {
  const bool touches = GENERATE(false, true);
  const Construct construct = bench_tube(touches ? 0.03 : 3.0, touches ? 0.01 : 1.5, FrictionLaw::none);
  const auto prepared = prepare_bodies(construct, construct.screws);
  const Assembly assembly = assemble(prepared, construct, construct.screws);
  const auto soft = assemble_soft(prepared, construct, construct.screws);
  REQUIRE(soft);
  CHECK(soft->construct.screw_interface == soft_interface);
  const PeakStress peak(assembly, PlatePlaces::likely);
  SolverAtBounds solver(assembly, &*soft, peak);
  ConstructSolver taken(assembly, peak);
  for (const auto& chosen : random_layouts(11, assembly, 4)) {
    CAPTURE(chosen);
    Outcome outcome = solver.solve(chosen);
    const Outcome expected = tests::long_way(*soft, chosen);
    CHECK(outcome.soft_screws.margin.value() == Approx(expected.margins.least().value()).epsilon(1e-8));
    CHECK(outcome.soft_screws.gap_strain.value() == Approx(figure(expected, "gap_strain").value()).epsilon(1e-8));
    CHECK(outcome.soft_screws.margin.value() != outcome.margins.least().value());
    outcome.soft_screws = {};
    CHECK(tests::same_bits(outcome, taken.solve(chosen)));
  }
  // One screw holds no fragment against the other: the construct as taken says so.
  CHECK_THROWS_AS(solver.solve({0}), ModelError);
}

TEST_CASE("screws taken as soft as the bound, or softer, are solved once", "[models][studies][solver]") {
  const Construct construct = with_interface(bench_tube(3.0, 1.5, FrictionLaw::none), 0.3);
  const auto prepared = prepare_bodies(construct, construct.screws);
  CHECK_FALSE(assemble_soft(prepared, construct, construct.screws));
  const Assembly assembly = assemble(prepared, construct, construct.screws);
  const PeakStress peak(assembly, PlatePlaces::likely);
  const Outcome outcome = SolverAtBounds(assembly, nullptr, peak).solve({0, 1, 4, 5, 6, 9});
  CHECK(outcome.soft_screws.margin == outcome.margins.least());
  CHECK(outcome.soft_screws.gap_strain == figure(outcome, "gap_strain"));
}

TEST_CASE("a fragment that no screw holds is named", "[models][studies][solver]") {
  const Assembly assembly = assemble_all(bench_tube(3.0, 1.5, FrictionLaw::none));
  const PeakStress peak(assembly, PlatePlaces::likely);
  ConstructSolver solver(assembly, peak);
  for (const auto& chosen : std::vector<std::vector<int>>{{0, 2, 4}, {4, 2, 0}, {1, 3}, {0}}) {
    CAPTURE(chosen);
    CHECK_THROWS_AS(solver.solve(chosen), ModelError);
    CHECK_THROWS_WITH(solver.solve(chosen), Catch::StartsWith("the distal fragment is free to "));
  }
}

// Shells have their highest stress at the rim of an empty hole. Heads that fill the holes on both sides of the
// fracture stiffen their rims, and then it lies between them: rims alone read up to 12 % too low there.
TEST_CASE("rims and the span over the fracture have the whole plate's peak", "[models][studies][solver]") {
  const bool touches = GENERATE(false, true);
  const Assembly assembly =
      assemble_all(bench_tube(touches ? 0.03 : 3.0, touches ? 0.01 : 1.5, FrictionLaw::none));
  const PeakStress likely(assembly, PlatePlaces::likely), more(assembly, PlatePlaces::likely_and_sample);
  ConstructSolver at_likely(assembly, likely), sampled(assembly, more);
  int both_filled = 0;
  for (const auto& chosen : random_layouts(8, assembly, 20)) {
    both_filled +=
        std::count(chosen.begin(), chosen.end(), 4) == 1 && std::count(chosen.begin(), chosen.end(), 5) == 1;
    const auto peaks = whole_plate_peaks(assembly, chosen);
    const Outcome outcome = at_likely.solve(chosen), with_sample = sampled.solve(chosen);
    for (std::size_t k = 0; k < peaks.size(); ++k) {
      CAPTURE(touches, chosen, k, peaks[k].along.value(), peaks[k].across.value());
      CHECK(outcome.loads[k].peak_stress.value() == Approx(peaks[k].von_mises.value()).epsilon(1e-8));
      CHECK(with_sample.loads[k].peak_stress == outcome.loads[k].peak_stress);
      CHECK(outcome.loads[k].peak_hole == peaks[k].hole);
    }
  }
  CHECK(both_filled > 2);
}

}  // namespace gapstrain
