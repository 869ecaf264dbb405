#include "cases/outputs/assessment_files.h"

#include "cases/outputs/columns.h"
#include "cases/outputs/margins_text.h"
#include "cases/outputs/plan_text.h"
#include "cases/outputs/race_csv.h"
#include "cases/outputs/result_head.h"
#include "cases/outputs/review_text.h"
#include "cases/outputs/state_lines.h"

namespace gapstrain::cases {

void write_assessment(OutputFolder& folder, const std::string& suffix, const models::Assessment& assessment,
                      const std::string& construct, const CaseOrigin& origin) {
  const std::string head = result_head(assessment.state, construct, origin, screen_columns);
  folder.write("margins" + suffix + ".txt", head + margins_text(assessment.margins, assessment.margins_left_out));
  folder.write("review" + suffix + ".txt", head + review_text(assessment.review));
  folder.write("plan" + suffix + ".txt", plan_text(assessment.plan, assessment.state, construct, origin));
  if (assessment.race)
    folder.write("race" + suffix + ".csv",
                 with_result_column(race_csv(*assessment.race, *assessment.history), assessment.state));
}

}  // namespace gapstrain::cases
