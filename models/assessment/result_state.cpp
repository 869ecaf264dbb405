#include "models/assessment/result_state.h"

#include "models/assessment/assess.h"

#include <algorithm>

namespace gapstrain::models {

namespace {

constexpr double most_likely = 0.5;  // share of the samples from which on a break is what to reckon with

// How the race ends for plate or screws where strain governs healing; null: there is no race of them.
const RaceOutcome* outcome_of(const Assessment& assessment, bool screws) {
  if (!assessment.race) return nullptr;
  const RaceCourse& course = course_of(*assessment.race, HealingCourse::governed);
  if (!screws) return &course;
  return course.screws ? &*course.screws : nullptr;
}

FailureTime time_of(const RaceOutcome& outcome, FailureTime::Kind without) {
  if (!outcome.breaks_low) return {without};
  return {FailureTime::Kind::in_race, outcome.breaks_low, outcome.breaks_high};
}

// A static limit is passed whenever the load comes; fatigue takes its time.
FailureTime when_it_fails(MarginKind kind, const Assessment& assessment) {
  if (!is_fatigue(kind)) return {FailureTime::Kind::at_first_load};
  const bool of_screws = kind == MarginKind::screw_fatigue || kind == MarginKind::screw_fatigue_of_all_loads;
  const RaceOutcome* outcome = outcome_of(assessment, of_screws);
  if (outcome == nullptr) return {FailureTime::Kind::before_cycles_asked};
  return time_of(*outcome, FailureTime::Kind::before_union_unhealed);
}

// What no margin says: scatter and tissue that does not form in time.
void add_lost_races(const Assessment& assessment, bool margins_say_so, std::vector<Failure>& failures) {
  if (margins_say_so) return;
  for (const bool screws : {true, false}) {
    const RaceOutcome* outcome = outcome_of(assessment, screws);
    if (outcome == nullptr || outcome->breaks_before_union < most_likely) continue;
    failures.push_back(
        {LostRace{screws, outcome->breaks_before_union}, time_of(*outcome, FailureTime::Kind::before_union)});
  }
}

}  // namespace

std::string Failure::load() const {
  const Margin* of = margin();
  return of == nullptr || is_of_all_loads(of->kind) ? "" : of->load;
}

std::optional<double> Failure::factor() const {
  return margin() != nullptr ? std::optional(margin()->factor) : std::nullopt;
}

BoundsVerdict InterfaceBounds::verdict() const {
  const Standing one = bonded.day.standing, other = soft.day.standing;
  if (one == Standing::not_trusted || other == Standing::not_trusted) return BoundsVerdict::unknown;
  if (one != other) return BoundsVerdict::hangs_on_it;
  return one == Standing::holds ? BoundsVerdict::holds_at_both : BoundsVerdict::fails_at_both;
}

std::optional<double> InterfaceBounds::least_margin() const {
  if (verdict() == BoundsVerdict::unknown || !bonded.day.least || !soft.day.least) return std::nullopt;
  return std::min(bonded.day.least->factor, soft.day.least->factor);
}

bool InterfaceBounds::warns(Standing taken_stands) const {
  return taken_stands == Standing::holds && soft.day.standing != Standing::holds;
}

Standing ResultState::standing() const {
  if (!not_trusted.empty()) return Standing::not_trusted;
  return fails.empty() ? Standing::holds : Standing::fails;
}

std::vector<Doubt> failed_checks(const Trust& trust) {
  std::vector<Doubt> doubts;
  for (const auto& check : trust.checks)
    if (!check.passed) doubts.emplace_back(check);
  return doubts;
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
  for (const LoadFindings& load : findings.loads)
    if (load.second_order.amplification)
      state.second_order.push_back(
          {load.load, load.second_order.load_ratio.value_or(0.0), *load.second_order.amplification});
  for (const LoadFindings& load : findings.loads)
    if (const auto& large = load.second_order.large; large && large->settled)
      state.turned.push_back({load.load, large->turn, large->within});
  bool fatigue_fails = false;
  for (const Margin& margin : worst_of_each_kind(failing(assessment.margins))) {
    state.fails.push_back({margin, when_it_fails(margin.kind, assessment)});
    fatigue_fails |= is_fatigue(margin.kind);
  }
  add_lost_races(assessment, fatigue_fails, state.fails);
  return state;
}

}  // namespace gapstrain::models
