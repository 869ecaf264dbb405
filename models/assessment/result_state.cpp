#include "models/assessment/result_state.h"

#include "models/assessment/assess.h"
#include "models/race/race_sentences.h"

#include <fmt/format.h>

namespace gapstrain::models {

namespace {

constexpr double most_likely = 0.5;  // share of the samples from which on a break is what to reckon with

bool is_fatigue(MarginKind kind) {
  return kind == MarginKind::plate_fatigue || kind == MarginKind::plate_fatigue_of_all_loads ||
         kind == MarginKind::screw_fatigue || kind == MarginKind::screw_fatigue_of_all_loads;
}

bool is_of_screws(MarginKind kind) {
  return kind == MarginKind::screw_fatigue || kind == MarginKind::screw_fatigue_of_all_loads;
}

// How the race ends for plate or screws where strain governs healing; null: there is no race of them.
const RaceOutcome* outcome_of(const Assessment& assessment, bool screws) {
  if (!assessment.race) return nullptr;
  const RaceCourse& course = course_of(*assessment.race, HealingCourse::governed);
  if (!screws) return &course;
  return course.screws ? &*course.screws : nullptr;
}

// A static limit is passed whenever the load comes; fatigue takes its time.
std::string when_it_fails(MarginKind kind, const Assessment& assessment) {
  if (!is_fatigue(kind)) return "at the first such load";
  const RaceOutcome* outcome = outcome_of(assessment, is_of_screws(kind));
  if (outcome == nullptr) return "before the cycles asked are reached";
  return break_time(*outcome).value_or("before union, if the gap stays as on the first day");
}

Failure failure_of(const Margin& margin, const Assessment& assessment) {
  const bool is_of_one_load = margin.kind != MarginKind::plate_fatigue_of_all_loads &&
                              margin.kind != MarginKind::screw_fatigue_of_all_loads;
  return {margin.part, is_of_one_load ? margin.load : "", margin.factor, when_it_fails(margin.kind, assessment),
          margin.sentence};
}

// What no margin says: scatter and tissue that does not form in time.
void add_lost_races(const Assessment& assessment, bool margins_say_so, std::vector<Failure>& failures) {
  if (margins_say_so) return;
  for (const bool screws : {true, false}) {
    const RaceOutcome* outcome = outcome_of(assessment, screws);
    if (outcome == nullptr || outcome->breaks_before_union < most_likely) continue;
    failures.push_back(
        {screws ? "screw heads, fatigue" : "plate, fatigue", "", std::nullopt,
         break_time(*outcome).value_or("before union"),
         fmt::format("In {:.0f} % of the samples {} before union.", 100.0 * outcome->breaks_before_union,
                     screws ? "screw heads break" : "the plate breaks")});
  }
}

}  // namespace

Standing ResultState::standing() const {
  if (!not_trusted.empty()) return Standing::not_trusted;
  return fails.empty() ? Standing::holds : Standing::fails;
}

std::vector<std::string> failed_checks(const Trust& trust) {
  std::vector<std::string> sentences;
  for (const auto& check : trust.checks)
    if (!check.passed)
      sentences.push_back(fmt::format("{}: {:.4g}, limit {:.3g}; it should hold that {}", check.name, check.value,
                                      check.limit, check.meaning));
  return sentences;
}

ResultState state_of_case(const Construct& construct) {
  ResultState state;
  state.estimated = construct.estimated;
  return state;
}

ResultState state_of(const Construct& construct, const Findings& findings, const Assessment& assessment) {
  ResultState state = state_of_case(construct);
  state.not_trusted = failed_checks(findings.trust);
  state.limits = findings.compression.limits;
  bool fatigue_fails = false;
  for (const Margin& margin : worst_of_each_kind(failing(assessment.margins))) {
    state.fails.push_back(failure_of(margin, assessment));
    fatigue_fails |= is_fatigue(margin.kind);
  }
  add_lost_races(assessment, fatigue_fails, state.fails);
  return state;
}

}  // namespace gapstrain::models
