#include "models/assessment/assess.h"

#include "models/assembly/prepared_bodies.h"
#include "models/layouts/ready_screws.h"

#include <fmt/format.h>

#include <utility>

namespace gapstrain::models {

namespace {

AssessedConstruct assess_on(const std::shared_ptr<const PreparedBodies>& prepared, const Construct& construct,
                            const std::vector<Screw>& screws, const Progress& progress) {
  AssessedConstruct assessed;
  assessed.analysis = analyse(assemble(prepared, construct, screws), progress);
  Assessment& assessment = assessed.assessment;
  CollectedMargins margins = collect_margins(construct, assessed.analysis.findings);
  assessment.margins = std::move(margins.margins);
  assessment.margins_left_out = std::move(margins.left_out);
  assessment.review = review(construct);
  assessment.plan = make_plan(construct);
  return assessed;
}

void race_against_healing(const std::shared_ptr<const PreparedBodies>& prepared, const Construct& construct,
                          const Progress& progress, Assessment& assessment) {
  assessment.no_race = why_no_race(construct);
  if (assessment.no_race) return;
  try {
    assessment.history = follow_healing(prepared, construct, progress);
    assessment.race = run_race(*assessment.history, construct);
  } catch (const ModelError& error) {  // of a load larger than those entered: the rest stands
    assessment.history.reset();
    assessment.no_race = fmt::format("The race of bone against plate cannot be followed: {}", error.what());
  }
}

}  // namespace

AssessedConstruct assess_first_day(const Construct& construct, const Progress& progress) {
  const auto screws = screws_to_make_ready(construct);
  auto assessed = assess_on(prepare_bodies(construct, screws, progress), construct, screws, progress);
  assessed.assessment.no_race = "The race of bone against plate is not run here; gapstrain analyse runs it.";
  assessed.assessment.state = state_of(construct, assessed.analysis.findings, assessed.assessment);
  return assessed;
}

AssessedConstruct assess(const Construct& construct, const Progress& progress) {
  const auto screws = screws_to_make_ready(construct);
  const auto prepared = prepare_bodies(construct, screws, progress);
  auto assessed = assess_on(prepared, construct, screws, progress);
  race_against_healing(prepared, construct, progress, assessed.assessment);
  assessed.assessment.state = state_of(construct, assessed.analysis.findings, assessed.assessment);
  return assessed;
}

}  // namespace gapstrain::models
