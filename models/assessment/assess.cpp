#include "models/assessment/assess.h"

#include "models/assembly/prepared_bodies.h"

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

}  // namespace

AssessedConstruct assess(const std::shared_ptr<const PreparedBodies>& prepared, const Construct& construct,
                         const std::vector<Screw>& screws, bool with_race, const Progress& progress) {
  AssessedConstruct assessed;
  assessed.analysis = analyse(assemble(prepared, construct, screws), progress);
  const Findings& findings = assessed.analysis.findings;
  Assessment& assessment = assessed.assessment;
  CollectedMargins margins = collect_margins(construct, findings);
  assessment.margins = std::move(margins.margins);
  assessment.margins_left_out = std::move(margins.left_out);
  assessment.review = review(construct);
  assessment.plan = make_plan(construct);
  if (with_race)
    race_against_healing(prepared, construct, progress, assessment);
  else
    assessment.no_race = NoRace{NoRace::Reason::not_asked};
  assessment.state = state_of(construct, findings, assessment);
  return assessed;
}

Standing standing_of(const std::shared_ptr<const PreparedBodies>& prepared, const Construct& construct,
                     const std::vector<Screw>& screws) {
  try {
    const Findings findings = analyse(assemble(prepared, construct, screws), {}, Extent::verdict).findings;
    Assessment first_day;
    first_day.margins = collect_margins(construct, findings).margins;
    return state_of(construct, findings, first_day).standing();
  } catch (const ModelError&) {
    return Standing::not_trusted;
  }
}

}  // namespace gapstrain::models
