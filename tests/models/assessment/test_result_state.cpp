// Each way in which a result may fail or not be trusted shows in its state.
#include "models/assessment/assess.h"
#include "models/assessment/result_state.h"
#include "models/words/state_words.h"

#include <catch2/catch.hpp>

using namespace gapstrain::models;

namespace {

Margin margin(MarginKind kind, double factor, bool indicative = false) {
  return {kind, "trot", factor, "", indicative};
}

Margin of_screw(MarginKind kind, double factor) {
  Margin found = margin(kind, factor);
  found.screw = ScrewId{4};
  found.label = "S4";
  return found;
}

Race race(double breaks_before_union, std::optional<double> low, std::optional<double> high) {
  Race race;
  RaceCourse governed;
  governed.course = HealingCourse::governed;
  ScrewRace screws;
  screws.breaks_before_union = breaks_before_union;
  screws.breaks_low = low;
  screws.breaks_high = high;
  governed.screws = screws;
  race.courses = {governed};
  return race;
}

ResultState state_with(const Assessment& assessment, const Findings& findings = {}) {
  return state_of(Construct{}, findings, assessment);
}

}  // namespace

TEST_CASE("a result holds when every margin that is seen well enough is above 1", "[models][review]") {
  Assessment assessment;
  assessment.margins = {margin(MarginKind::bone_yield_at_screws, 0.7, true),
                        margin(MarginKind::plate_yield, 1.01)};
  const auto state = state_with(assessment);
  CHECK(state.standing() == Standing::holds);
  CHECK(state.fails.empty());
}

TEST_CASE("a margin below 1 fails at the first such load, fatigue in the weeks of the race", "[models][review]") {
  Assessment assessment;
  assessment.margins = {of_screw(MarginKind::screw_fatigue, 0.6), margin(MarginKind::plate_yield, 0.9)};
  assessment.race = race(0.97, 1.4, 4.2);
  const auto state = state_with(assessment);
  REQUIRE(state.fails.size() == 2);
  CHECK(state.standing() == Standing::fails);
  CHECK(failed_part(state.fails[0]) == "screw S4, fatigue");
  CHECK(state.fails[0].when.from == 1.4);
  CHECK(state.fails[0].when.to == 4.2);
  CHECK(failure_time(state.fails[0].when) == "in week 2 to 5");
  CHECK(failure_time(state.fails[1].when) == "at the first such load");

  assessment.race = race(0.03, 30.0, std::nullopt);
  CHECK(failure_time(state_with(assessment).fails[0].when) == "not before week 30");
  assessment.race.reset();
  CHECK(failure_time(state_with(assessment).fails[0].when) == "before the cycles asked are reached");
}

TEST_CASE("screws that break before union in most samples fail though every margin holds", "[models][review]") {
  Assessment assessment;
  assessment.margins = {of_screw(MarginKind::screw_fatigue, 1.2)};
  assessment.race = race(0.51, 3.0, 9.0);
  const auto state = state_with(assessment);
  REQUIRE(state.fails.size() == 1);
  CHECK(failed_part(state.fails[0]) == "screws, fatigue");
  CHECK_FALSE(state.fails[0].factor().has_value());
  CHECK(failure_sentence(Construct{}, state.fails[0]) == "In 51 % of the samples screws break before union.");
  assessment.race = race(0.49, 3.0, 9.0);
  CHECK(state_with(assessment).fails.empty());
}

TEST_CASE("a failed check outweighs everything else", "[models][review]") {
  Assessment assessment;
  assessment.margins = {margin(MarginKind::plate_yield, 2.0)};
  Findings findings;
  findings.trust.checks = {{"residual", 1e-12, 1e-7, true, "forces balance"}};
  CHECK(state_with(assessment, findings).standing() == Standing::holds);
  findings.trust.checks.push_back({"energy balance", 0.3, 1e-8, false, "work is stored"});
  const auto state = state_with(assessment, findings);
  CHECK(state.standing() == Standing::not_trusted);
  REQUIRE(state.not_trusted.size() == 1);
  CHECK(doubt_sentence(state.not_trusted[0]) ==
        "energy balance: 0.3, limit 1e-08; it should hold that work is stored");
}

TEST_CASE("every failed check is told, none that passed, and what fails besides stays on the list",
          "[models][review]") {
  Assessment assessment;
  assessment.margins = {margin(MarginKind::plate_yield, 0.5)};
  Findings findings;
  findings.trust.checks = {{"residual", 2e-7, 1e-7, false, "forces balance"},
                           {"energy balance", 1e-12, 1e-8, true, "work is stored"},
                           {"load factor to buckling", 3.2, 4.0, false, "it does not give way"}};
  const auto state = state_with(assessment, findings);
  CHECK(state.standing() == Standing::not_trusted);
  REQUIRE(state.not_trusted.size() == 2);
  CHECK(std::get<Check>(state.not_trusted[0]).value == 2e-7);
  CHECK(doubt_sentence(state.not_trusted[0]) ==
        "residual: 2e-07, limit 1e-07; it should hold that forces balance");
  CHECK(doubt_sentence(state.not_trusted[1]) ==
        "load factor to buckling: 3.2, limit 4; it should hold that it does not give way");
  REQUIRE(state.fails.size() == 1);
  CHECK(failed_part(state.fails[0]) == "plate, yield");
}

TEST_CASE("a plate that breaks before union in half of the samples fails though every margin holds",
          "[models][review]") {
  Assessment assessment;
  assessment.margins = {margin(MarginKind::plate_fatigue, 1.2)};
  assessment.race = race(0.0, std::nullopt, std::nullopt);
  assessment.race->courses[0].breaks_before_union = 0.5;
  const auto state = state_with(assessment);
  REQUIRE(state.fails.size() == 1);
  CHECK(failed_part(state.fails[0]) == "plate, fatigue");
  CHECK(failure_sentence(Construct{}, state.fails[0]) == "In 50 % of the samples the plate breaks before union.");
  assessment.race->courses[0].breaks_before_union = 0.49;
  CHECK(state_with(assessment).fails.empty());
}

TEST_CASE("fatigue of a whole day names no load, of each kind the worst is told", "[models][review]") {
  Assessment assessment;
  assessment.margins = {margin(MarginKind::plate_fatigue_of_all_loads, 0.6), margin(MarginKind::plate_yield, 0.7),
                        margin(MarginKind::plate_yield, 0.9)};
  const auto state = state_with(assessment);
  REQUIRE(state.fails.size() == 2);
  CHECK(state.fails[0].load().empty());
  CHECK(state.fails[1].load() == "trot");
  CHECK(state.fails[1].factor() == 0.7);
}

TEST_CASE("limits, estimates and second-order effects travel with the state", "[models][review]") {
  Construct construct;
  construct.estimated = {Estimate::cortex};
  Findings findings;
  findings.compression.limits = {{.kind = LimitKind::plate_slips, .value = 0.03}};
  findings.loads.resize(2);
  findings.loads[1].load = "trot";
  findings.loads[1].second_order = {0.12, 1.14};
  const auto state = state_of(construct, findings, Assessment{});
  REQUIRE(state.second_order.size() == 1);
  CHECK(state.second_order[0].load == "trot");
  CHECK(state.second_order[0].load_ratio == 0.12);
  CHECK(state.second_order[0].amplification == 1.14);
  REQUIRE(state.limits.size() == 1);
  CHECK(state.limits[0].kind == LimitKind::plate_slips);
  CHECK(state.limits[0].value == 0.03);
  CHECK(state.estimated == construct.estimated);
  CHECK(state.standing() == Standing::holds);
}

TEST_CASE("every estimate has a key of its own that finds it again", "[models][parts]") {
  const auto keys = estimate_keys();
  CHECK(keys.size() == 8);
  for (const auto& key : keys) {
    const auto found = find_estimate(key);
    REQUIRE(found.has_value());
    CHECK(key_of(*found) == key);
  }
  CHECK_FALSE(find_estimate("bone.colour").has_value());
  CHECK(screw_lengths_rest_on({Estimate::gap, Estimate::cortex}));
  CHECK(screw_lengths_rest_on({Estimate::implants}));
  CHECK_FALSE(screw_lengths_rest_on({Estimate::gap, Estimate::bone_length, Estimate::weeks_to_union}));
}
