#include "models/review/assess.h"

#include "models/build/prepared_bodies.h"

#include <fmt/format.h>

namespace gapstrain::models {

AssessedConstruct assess(const Construct& construct, const Progress& progress) {
  const auto screws = screws_to_make_ready(construct);
  const auto prepared = prepare_bodies(construct, screws, progress);
  AssessedConstruct assessed;
  assessed.analysis = analyse(assemble(prepared, construct, screws), progress);
  Assessment& assessment = assessed.assessment;
  assessment.margins = find_margins(construct, assessed.analysis.findings);
  assessment.margins_left_out = margins_left_out(construct, assessed.analysis.findings);
  assessment.review = review(construct);
  assessment.plan = make_plan(construct);
  assessment.no_race = why_no_race(construct);
  if (assessment.no_race) return assessed;
  try {
    assessment.history = follow_healing(prepared, construct, progress);
    assessment.race = run_race(*assessment.history, construct);
  } catch (const ModelError& error) {  // of a load larger than those entered: the rest stands
    assessment.history.reset();
    assessment.no_race = fmt::format("The race of bone against plate cannot be followed: {}", error.what());
  }
  return assessed;
}

}  // namespace gapstrain::models
