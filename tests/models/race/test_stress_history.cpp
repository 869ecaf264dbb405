// A gap on its way to union, held against constructs with the same tissue all over. A coarse mesh serves.
#include "models/preparation/prepare_bodies.h"
#include "models/race/stress_history.h"

#include "models/assembly/prepared_bodies.h"
#include "models/measures/analyse.h"
#include "models/measures/solve.h"
#include "models/race/gap_state.h"
#include "models/race/healing_gap.h"
#include "models/race/tissue_ladder.h"
#include "models/stress/screw_notch.h"
#include "models/words/race_words.h"
#include "tests/models/constructs.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

namespace gapstrain {

using namespace models;  // NOLINT: this file is nothing but healing

namespace {

// Axial load and bending come every day, torsion does not.
Construct healing_tube() {
  Construct construct = tests::plated_tube();
  construct.mesh.refinement = 0.5;
  only(construct.plates).material.ultimate_strength = 930.0 * mpa;
  only(construct.plates).material.fatigue_strength =
      FatigueStrength{310.0 * mpa, 380.0 * mpa, 450.0 * mpa, "made up for tests"};
  construct.loads[0].cycles_per_day = 2000.0;
  construct.loads[1].cycles_per_day = 500.0;
  Healing healing;
  healing.weeks_from = 8.0;
  healing.weeks_to = 16.0;
  healing.at_first = *find_tissue("granulation-tissue");
  healing.at_union = *find_tissue("mature-woven-bone");
  construct.healing = healing;
  return construct;
}

// What differs in loads, tissue and healing alone has the same bodies.
const std::shared_ptr<const PreparedBodies>& tube_bodies() {
  static const auto bodies = prepare_bodies(healing_tube(), healing_tube().screws);
  return bodies;
}

const StressHistory::Course& course_of(const StressHistory& history, HealingCourse kind) {
  return *std::find_if(history.courses.begin(), history.courses.end(),
                       [&](const auto& course) { return course.course == kind; });
}

double peak_with(const std::optional<Tissue>& tissue) {
  Construct construct = healing_tube();
  only(construct.fractures).tissue = tissue;
  const auto findings = analyse(assemble(tube_bodies(), construct, construct.screws)).findings;
  return std::max(findings.loads[0].plate.peak.von_mises.value(), findings.loads[1].plate.peak.von_mises.value());
}

void scale_loads(Construct& construct, double factor) {
  for (auto& load : construct.loads) {
    load.axial_compression *= factor;
    load.bending_y *= factor;
  }
}

// Largest difference of amplitudes at the same moment, load and place, over the largest amplitude.
double difference(const StressHistory::Course& one, const StressHistory::Course& other, std::size_t factor) {
  double largest = 0.0, apart = 0.0;
  for (std::size_t moment = 0; moment < one.cycles.size(); ++moment)
    for (std::size_t load = 0; load < one.cycles[moment][factor].size(); ++load)
      for (std::size_t place = 0; place < one.cycles[moment][factor][load].size(); ++place) {
        const double a = one.cycles[moment][factor][load][place].amplitude.value(),
                     b = other.cycles[moment][factor][load][place].amplitude.value();
        largest = std::max(largest, a);
        apart = std::max(apart, std::abs(a - b));
      }
  return apart / largest;
}

}  // namespace

TEST_CASE("the steady course goes through the construct with each tissue all over its gap", "[models][review]") {
  const Construct construct = healing_tube();
  const StressHistory history = follow_healing(tube_bodies(), construct);
  const auto& steady = course_of(history, HealingCourse::steady);
  const auto ladder = tissue_ladder(*construct.healing, static_cast<int>(history.progress.size()));
  const std::size_t rungs = ladder.size();
  for (const std::size_t rung : {std::size_t{0}, rungs / 3, 2 * rungs / 3, rungs - 1}) {
    CAPTURE(rung);
    CHECK(steady.gap[rung].modulus.value() == Approx(ladder[rung].youngs_modulus.value()));
    CHECK(steady.gap[rung].plate_peak.value() == Approx(peak_with(ladder[rung])).epsilon(1e-6));
  }
  // Locking heads: nothing is strained at rest, so that the amplitude is half of the peak.
  const auto as_entered = std::find(history.load_factors.begin(), history.load_factors.end(), 1.0);
  REQUIRE(as_entered != history.load_factors.end());
  double amplitude = 0.0;
  for (const auto& load : steady.cycles[0][static_cast<std::size_t>(as_entered - history.load_factors.begin())])
    for (const auto& cycle : load) amplitude = std::max(amplitude, cycle.amplitude.value());
  CHECK(amplitude == Approx(0.5 * steady.gap[0].plate_peak.value()));
  REQUIRE(history.loads == std::vector<std::size_t>{0, 1});
  CHECK(course_of(history, HealingCourse::none).gap.back().plate_peak == steady.gap[0].plate_peak);
}

TEST_CASE("screws are followed as the analysis of each filled gap has them", "[models][review]") {
  Construct construct = healing_tube();
  for (auto& screw : construct.screws) screw.material = only(construct.plates).material;
  construct.screws.back().material.fatigue_strength.reset();  // is left out
  const StressHistory history = follow_healing(tube_bodies(), construct);
  const auto& steady = course_of(history, HealingCourse::steady);
  const auto ladder = tissue_ladder(*construct.healing, static_cast<int>(history.progress.size()));
  const std::size_t plate_places = history.places.size() - static_cast<std::size_t>(std::count_if(
                                                               history.places.begin(), history.places.end(),
                                                               [](const HotPlace& place) { return place.screw; }));
  const std::size_t followed_screws = construct.screws.size() - 1;  // each at its head, then each in bone
  REQUIRE(history.places.size() - plate_places == 2 * followed_screws);
  const auto as_entered = static_cast<std::size_t>(
      std::find(history.load_factors.begin(), history.load_factors.end(), 1.0) - history.load_factors.begin());
  for (const std::size_t rung : {std::size_t{0}, ladder.size() / 2, ladder.size() - 1}) {
    Construct filled = construct;
    only(filled.fractures).tissue = ladder[rung];
    const auto findings = analyse(assemble(tube_bodies(), filled, filled.screws)).findings;
    for (std::size_t load = 0; load < history.loads.size(); ++load)
      for (std::size_t place = plate_places; place < history.places.size(); ++place) {
        CAPTURE(rung, load, place);
        const StressCycle& followed = steady.cycles[rung][as_entered][load][place];
        const auto& screw = findings.loads[history.loads[load]].screws[*history.places[place].screw];
        CHECK(screw.label == construct.screws[*history.places[place].screw].label);
        const bool in_bone = place >= plate_places + followed_screws;
        const StressCycle& own = in_bone ? screw.thread_cycle : screw.head_cycle;
        CHECK(followed.amplitude.value() == Approx(own.amplitude.value()).epsilon(1e-6).margin(1e-6));
        CHECK(followed.mean.value() == Approx(own.mean.value()).epsilon(1e-6).margin(1e-6));
        const Screw& part = construct.screws[*history.places[place].screw];
        CHECK(history.places[place].notch == (in_bone ? thread_notch(part) : head_notch(part)));
      }
  }
}

TEST_CASE("tissue of next to no stiffness leaves the gap empty, bone in it spares the plate", "[models][review]") {
  Construct construct = healing_tube();
  construct.healing->at_first.youngs_modulus = 1e-6 * mpa;
  construct.healing->at_union.youngs_modulus = 17000.0 * mpa;
  const auto history = follow_healing(tube_bodies(), construct);
  const auto& steady = course_of(history, HealingCourse::steady);
  CHECK(steady.gap.front().plate_peak.value() == Approx(peak_with(std::nullopt)).epsilon(1e-6));
  CHECK(steady.gap.back().plate_peak < 0.1 * steady.gap.front().plate_peak);
  CHECK(steady.gap.back().largest_strain < 0.001);
}

TEST_CASE("a gap is followed with the same bits in every run", "[models][review]") {
  const auto one = follow_healing(tube_bodies(), healing_tube()),
             other = follow_healing(tube_bodies(), healing_tube());
  REQUIRE(one.places.size() == other.places.size());
  for (std::size_t c = 0; c < one.courses.size(); ++c)
    for (std::size_t factor = 0; factor < one.load_factors.size(); ++factor)
      CHECK(difference(one.courses[c], other.courses[c], factor) == 0.0);
}

TEST_CASE("a course of screws in bone that stays as it is changes nothing", "[models][review]") {
  Construct construct = healing_tube();
  construct.screw_interface = mean_interface;
  const StressHistory without = follow_healing(tube_bodies(), construct);
  construct.interface_course = {{3.0, mean_interface}, {9.0, mean_interface}};
  const StressHistory with = follow_healing(tube_bodies(), construct);
  CHECK(with.interfaces.empty());
  for (std::size_t c = 0; c < without.courses.size(); ++c) {
    CHECK(difference(with.courses[c], without.courses[c], 3) == 0.0);
    CHECK(with.courses[c].gap.back().largest_strain == without.courses[c].gap.back().largest_strain);
  }
}

TEST_CASE("as screws soften in bone the gap moves more from week to week", "[models][review]") {
  Construct construct = healing_tube();
  construct.interface_course = {{6.0, 0.2}};  // union in week 12 on the mean: half of the moments
  const StressHistory history = follow_healing(tube_bodies(), construct);
  const std::size_t moments = history.progress.size(), half = moments / 2;
  REQUIRE(history.interfaces.size() == moments);
  CHECK(history.interfaces.front() == 1.0);
  CHECK(history.interfaces[half / 2] == Approx(0.6));
  CHECK(history.interfaces[half] == Approx(0.2));
  CHECK(history.interfaces.back() == 0.2);
  const auto& none = course_of(history, HealingCourse::none);
  for (std::size_t moment = 1; moment <= half; ++moment)
    CHECK(none.gap[moment].largest_strain > none.gap[moment - 1].largest_strain);
  for (std::size_t moment = half + 1; moment < moments; ++moment)
    CHECK(none.gap[moment].largest_strain == none.gap[half].largest_strain);
  // The last moments are those of a construct that was made with screws as soft: locking heads, nothing locked in.
  Construct soft = construct;
  soft.interface_course.clear();
  soft.screw_interface = 0.2;
  const StressHistory made_soft = follow_healing(tube_bodies(), soft);
  CHECK(none.gap.back().largest_strain ==
        Approx(course_of(made_soft, HealingCourse::none).gap.front().largest_strain).epsilon(1e-9));
  CHECK(none.gap.back().largest_strain > 1.01 * none.gap.front().largest_strain);
}

TEST_CASE("stress goes with the load where nothing touches", "[models][review]") {
  const auto history = follow_healing(tube_bodies(), healing_tube());
  const auto& steady = course_of(history, HealingCourse::steady);
  const double factor = history.load_factors.back();
  const auto unit = static_cast<std::size_t>(
      std::find(history.load_factors.begin(), history.load_factors.end(), 1.0) - history.load_factors.begin());
  for (std::size_t place = 0; place < history.places.size(); ++place) {
    CHECK(steady.cycles[4].back()[0][place].amplitude.value() ==
          Approx(factor * steady.cycles[4][unit][0][place].amplitude.value()));
    CHECK(steady.cycles[4].back()[0][place].mean.value() ==
          Approx(factor * steady.cycles[4][unit][0][place].mean.value()));
  }
}

TEST_CASE("shares of the gap's area add up to all of it", "[models][review]") {
  for (const auto& course : follow_healing(tube_bodies(), healing_tube()).courses)
    for (const auto& gap : course.gap) {
      const auto& perren = gap.perren;
      CHECK(perren.bone + perren.cartilage + perren.granulation + perren.none + perren.closed == Approx(1.0));
      CHECK(gap.claes.membranous + gap.claes.endochondral + gap.claes.fibrous + gap.claes.closed == Approx(1.0));
      CHECK(gap.united + gap.held <= 1.0 + 1e-9);
    }
}

TEST_CASE("with hardly any strain healing is steady", "[models][review]") {
  Construct construct = healing_tube();
  scale_loads(construct, 0.01);
  const auto history = follow_healing(tube_bodies(), construct);
  const auto& governed = course_of(history, HealingCourse::governed);
  for (std::size_t factor = 0; factor < history.load_factors.size(); ++factor) {
    CHECK(difference(governed, course_of(history, HealingCourse::steady), factor) == 0.0);
    CHECK(governed.united[factor] == 1.0);
  }
}

TEST_CASE("a gap that is pulled apart by more than its own width does not heal", "[models][review]") {
  Construct construct = healing_tube();
  construct.loads.resize(1);
  scale_loads(construct, -1e4);  // pulls; closing it would end in contact
  const auto history = follow_healing(tube_bodies(), construct);
  const auto& governed = course_of(history, HealingCourse::governed);
  CHECK(governed.gap.front().perren.none == Approx(1.0));
  CHECK(governed.gap.back().modulus == governed.gap.front().modulus);
  CHECK(governed.gap.back().held == Approx(1.0));
  CHECK(governed.united.back() == 0.0);
  CHECK(difference(governed, course_of(history, HealingCourse::none), 0) == 0.0);
}

TEST_CASE("larger loads hold healing back more", "[models][review]") {
  Construct construct = healing_tube();
  construct.loads.resize(1);
  const auto history = follow_healing(tube_bodies(), construct);
  const auto& united = course_of(history, HealingCourse::governed).united;
  CHECK(united.front() > united.back());
  CHECK(std::is_sorted(united.rbegin(), united.rend()));
}

TEST_CASE("tissue that has grown in a construct at rest carries nothing there", "[models][review]") {
  Construct construct = healing_tube();
  // Ball heads press the plate on the bone: the construct is strained before any load.
  for (auto& screw : construct.screws) {
    screw.kind = ScrewKind::cortical;
    screw.preload = 300.0 * newton;
  }
  only(construct.plates).standoff = 0.1 * mm;
  const Assembly assembly = assemble(prepare_bodies(construct, construct.screws), construct, construct.screws,
                                     tissue_ladder(*construct.healing, 3));
  const auto made = carry_out(assembly, procedure_of(construct, chosen_screws(assembly, construct.screws))).back();
  const auto filled = fill_gap(make_healing_gap(assembly, made, 3), SpotStages(assembly.face.size(), 2));
  REQUIRE(made.pressed.pressure.maxCoeff() > 1.0);
  const auto at_rest =
      solver::press(*assembly.system, assembly.pairs, filled.setting, assembly.system->no_loads(1));
  for (const int link : assembly.tissues[2].links)
    CHECK(at_rest.forces.segment<3>(assembly.system->first_row(link)).norm() < 1e-6);
  CHECK((at_rest.solution.port_forces[only_plate_body] - made.pressed.solution.port_forces[only_plate_body])
            .cwiseAbs()
            .maxCoeff() < 1e-6);
  // It does carry once a load comes.
  const auto loaded = apply_load(assembly, filled, assembly.loads[0]);
  CHECK(loaded.pressed.forces.segment<3>(assembly.system->first_row(assembly.tissues[2].links[0])).norm() > 0.1);
}

TEST_CASE("where the steps left the gap narrow its tissue is as much stiffer", "[models][review]") {
  const Construct construct = healing_tube();
  constexpr std::size_t stages = 10;
  const Assembly assembly = assemble(tube_bodies(), construct, construct.screws,
                                     tissue_ladder(*construct.healing, static_cast<int>(stages), 4));
  StepState made = carry_out(assembly, procedure_of(construct, chosen_screws(assembly, construct.screws))).back();
  made.pressed.gap(0) = 0.3;  // a tenth of the fracture's 3 mm
  made.pressed.gap(1) = 0.0;  // taken as 0.1 mm
  const HealingGap gap = make_healing_gap(assembly, made, stages);
  const double rung = std::pow(6000.0 / 0.2, 1.0 / 9.0);
  const auto stiffer = [&](std::size_t spot) {
    return (gap.filling(spot, 2).tissue.youngs_modulus / assembly.tissues[2].tissue.youngs_modulus).value();
  };
  CHECK(std::abs(std::log(stiffer(0) / 10.0)) <= 0.5 * std::log(rung));
  CHECK(std::abs(std::log(stiffer(1) / 30.0)) <= 0.5 * std::log(rung));
  CHECK(stiffer(2) == 1.0);
}

TEST_CASE("a spot that shuts under the load is strained by all of its gap, and does not heal",
          "[models][review]") {
  Construct construct = healing_tube();
  only(construct.fractures).gap = 0.2 * mm;
  const Assembly assembly = assemble(prepare_bodies(construct, construct.screws), construct, construct.screws,
                                     tissue_ladder(*construct.healing, 3));
  const HealingGap gap = make_healing_gap(
      assembly, carry_out(assembly, procedure_of(construct, chosen_screws(assembly, construct.screws))).back(), 3);
  const SpotStages stages(assembly.face.size(), 0);
  const ConstructState filled = fill_gap(gap, stages);
  double factor = 1.0;
  ConstructState loaded = solve_load(assembly, filled, assembly.loads[0]);
  while (loaded.pressed.closed[0] == 0 && loaded.pressed.pressure.maxCoeff() <= 0.0 && factor < 1e3) {
    factor *= 1.3;
    loaded = solve_load(assembly, filled, scaled(assembly.loads[0], factor));
  }
  const auto spots = measure_spots(gap, loaded, stages);
  int shut = 0;
  for (std::size_t k = 0; k < spots.size(); ++k) {
    CHECK_FALSE(spots[k].closed);
    if (loaded.pressed.closed[k] == 0) continue;
    ++shut;
    CHECK(spots[k].axial == Approx(1.0).margin(0.05));
    CHECK_FALSE(bears_next(gap, spots[k], 4));
  }
  CHECK(shut > 0);
}

TEST_CASE("tissues bear Perren's strains, and less the stiffer they are", "[models][review]") {
  // Perren 1979, Clin Orthop 138:175, as quoted in surgical texts.
  CHECK(strain_borne(find_tissue("granulation-tissue")->youngs_modulus) == Approx(1.0));
  CHECK(strain_borne(find_tissue("cartilage")->youngs_modulus) == Approx(0.1));
  CHECK(strain_borne(find_tissue("immature-bone")->youngs_modulus) == Approx(0.02));
  CHECK(strain_borne(find_tissue("mature-woven-bone")->youngs_modulus) == Approx(0.02));
  // Half-way between 10 and 1000 MPa in logarithms: the geometric mean of 10 and 2 %.
  CHECK(strain_borne(100.0 * mpa) == Approx(std::sqrt(0.1 * 0.02)));
  CHECK(strain_borne(0.01 * mpa) == Approx(1.0));
}

TEST_CASE("a construct that cannot be raced says why, and what to enter", "[models][review]") {
  using Reason = NoRace::Reason;
  CHECK_FALSE(why_no_race(healing_tube()));
  const auto check = [](Reason reason, const std::string& words, const auto& change) {
    Construct construct = healing_tube();
    change(construct);
    const auto why = why_no_race(construct);
    REQUIRE(why);
    CHECK(why->reason == reason);
    CHECK_THAT(no_race_sentence(*why), Catch::Matchers::Contains(words));
    CHECK(why->metal.empty() == (reason != Reason::unknown_strength));
  };
  check(Reason::no_healing, "needs a table [healing] with weeks_from and weeks_to.",
        [](Construct& c) { c.healing.reset(); });
  check(Reason::no_daily_cycles, "needs cycles_per_day of the loads that come every day.", [](Construct& c) {
    for (auto& load : c.loads) load.cycles_per_day.reset();
  });
  check(Reason::no_gap, "needs an open gap in which tissue stiffens; this fracture has none.",
        [](Construct& c) { only(c.fractures).gap = 0.0 * mm; });
  check(Reason::unknown_strength,
        "ultimate and fatigue strength; " + only(healing_tube().plates).material.name + " has none.",
        [](Construct& c) { only(c.plates).material.fatigue_strength.reset(); });
  check(Reason::filled_by_step, "leave out the step that fills the gap with tissue", [](Construct& c) {
    Step step;
    step.tissue = find_tissue("cartilage");
    c.steps = {step};
  });
  CHECK(no_race_sentence({Reason::without_an_answer, {}, "The construct slides."}) ==
        "The race of bone against plate cannot be followed: The construct slides.");
}

// Cycles are judged by what loads ask of metals that do not yield: unloading is elastic. The gap, though, is
// strained by what the plate gives.
TEST_CASE("a plate that bends for good under its loads runs the race with its elastic cycles", "[models][yield]") {
  Construct construct = healing_tube();
  only(construct.plates).material.yield_strength = 300.0 * mpa;
  construct.healing->at_first = *find_tissue("granulation-tissue");
  scale_loads(construct, 3.0);
  const auto history = [&](MetalLaw law) {
    construct.metal_law = law;
    return follow_healing(tube_bodies(), construct);
  };
  const StressHistory elastic = history(MetalLaw::elastic), yields = history(MetalLaw::elastic_plastic);
  const auto as_entered = static_cast<std::size_t>(
      std::find(elastic.load_factors.begin(), elastic.load_factors.end(), 1.0) - elastic.load_factors.begin());
  const auto& one = course_of(elastic, HealingCourse::none);
  const auto& other = course_of(yields, HealingCourse::none);
  CHECK(other.gap[0].largest_strain > 1.02 * one.gap[0].largest_strain);
  CHECK(difference(one, other, as_entered) < 1e-6);
}

}  // namespace gapstrain
