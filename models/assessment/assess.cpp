#include "models/assessment/assess.h"

#include "models/assembly/prepared_bodies.h"
#include "models/assessment/interface_bounds.h"
#include "models/measures/trust.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace gapstrain::models {

namespace {

void race_against_healing(const std::shared_ptr<const PreparedBodies>& prepared, const Construct& construct,
                          const Progress& progress, Assessment& assessment) {
  assessment.no_race = why_no_race(construct);
  if (assessment.no_race) return;
  try {
    assessment.history = follow_healing(prepared, construct, progress);
    assessment.race = run_race(*assessment.history, construct);
  } catch (const ModelError& error) {  // of a load larger than those entered: the rest stands
    assessment.history.reset();
    assessment.no_race = NoRace{NoRace::Reason::without_an_answer, {}, error.what()};
  }
}

std::optional<double> largest_gap_strain(const Findings& findings) {
  std::optional<double> largest;
  for (const auto& load : findings.loads)
    if (const auto& strain = load.gap.axial_strain)
      largest = std::max({largest.value_or(0.0), std::abs(strain->min), std::abs(strain->max)});
  return largest;
}

FirstDay first_day(const Construct& construct, const Findings& findings, std::vector<Margin> margins) {
  Assessment alone;
  alone.margins = std::move(margins);
  FirstDay day{state_of(construct, findings, alone).standing(), std::nullopt, largest_gap_strain(findings)};
  if (const Margin* least = least_margin(alone.margins)) day.least = *least;
  return day;
}

}  // namespace

AssessedConstruct assess(const std::shared_ptr<const PreparedBodies>& prepared, const Construct& construct,
                         const std::vector<Screw>& screws, bool with_race, const Progress& progress) {
  return assess(analyse(assemble(prepared, construct, screws), progress), prepared, construct, with_race,
                progress);
}

AssessedConstruct assess(Analysis analysis, const std::shared_ptr<const PreparedBodies>& prepared,
                         const Construct& construct, bool with_race, const Progress& progress) {
  AssessedConstruct assessed = assess_as_analysed(std::move(analysis), construct);
  if (with_race) {
    race_against_healing(prepared, construct, progress, assessed.assessment);
    assessed.assessment.state = state_of(construct, assessed.analysis.findings, assessed.assessment);
  }
  if (assessed.assessment.state.not_trusted.empty() && progress) progress("trying screws that sit softer in bone");
  try_other_interfaces(assessed, prepared, construct);
  return assessed;
}

AssessedConstruct assess_as_analysed(Analysis analysis, const Construct& construct) {
  AssessedConstruct assessed;
  assessed.analysis = std::move(analysis);
  const Findings& findings = assessed.analysis.findings;
  Assessment& assessment = assessed.assessment;
  CollectedMargins margins = collect_margins(construct, findings);
  assessment.margins = std::move(margins.margins);
  assessment.margins_left_out = std::move(margins.left_out);
  assessment.review = review(construct);
  assessment.plan = make_plan(construct);
  if (assessment.no_race = why_no_race(construct); !assessment.no_race)
    assessment.no_race = NoRace{NoRace::Reason::not_asked};
  assessment.state = state_of(construct, findings, assessment);
  return assessed;
}

void add_buckling(AssessedConstruct& assessed, const Construct& construct) {
  Findings& findings = assessed.analysis.findings;
  judge_buckling(findings.trust, findings.loads);
  assessed.assessment.state = state_of(construct, findings, assessed.assessment);
}

void try_other_interfaces(AssessedConstruct& assessed, const std::shared_ptr<const PreparedBodies>& prepared,
                          const Construct& construct) {
  const Findings& findings = assessed.analysis.findings;
  ResultState& state = assessed.assessment.state;
  if (!state.not_trusted.empty()) return;  // nothing is known that a bound could turn
  const FirstDay taken = first_day(construct, findings, assessed.assessment.margins);
  const Extent extent = is_near_buckling(findings.trust) ? Extent::verdict : Extent::margins;
  const auto day_of = [&](const Construct& other) {
    return first_day_of(prepared, other, construct.screws, extent);
  };
  state.interface = find_interface_bounds(construct, taken, day_of);
  state.softening = find_softening(construct, taken, day_of);
  if (auto failure = failure_as_screws_soften(state.softening)) state.fails.push_back(std::move(*failure));
}

FirstDay first_day_of(const std::shared_ptr<const PreparedBodies>& prepared, const Construct& construct,
                      const std::vector<Screw>& screws, Extent extent) {
  try {
    const Findings findings = analyse(assemble(prepared, construct, screws), {}, extent).findings;
    return first_day(construct, findings, collect_margins(construct, findings).margins);
  } catch (const ModelError&) {
    return {Standing::not_trusted};
  }
}

Standing standing_of(const std::shared_ptr<const PreparedBodies>& prepared, const Construct& construct,
                     const std::vector<Screw>& screws) {
  return first_day_of(prepared, construct, screws).standing;
}

}  // namespace gapstrain::models
