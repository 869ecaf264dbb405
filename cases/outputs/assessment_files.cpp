#include "cases/outputs/assessment_files.h"

#include "cases/outputs/sentences/margins_text.h"
#include "cases/outputs/sentences/plan_text.h"
#include "cases/outputs/sentences/result_head.h"
#include "cases/outputs/sentences/review_text.h"
#include "cases/outputs/sentences/state_lines.h"
#include "cases/outputs/tables/race_csv.h"
#include "cases/text/columns.h"

namespace gapstrain::cases {

void write_assessment(OutputFolder& folder, const std::string& suffix, const models::Assessment& assessment,
                      const models::Construct& construct, const CaseOrigin& origin) {
  const std::string head = result_head(assessment.state, construct.name, origin, screen_columns);
  folder.write("margins" + suffix + ".txt",
               head + margins_text(construct, assessment.margins, assessment.margins_left_out));
  folder.write("review" + suffix + ".txt", head + review_text(assessment.review));
  folder.write("plan" + suffix + ".txt", plan_text(assessment.plan, assessment.state, construct.name, origin));
  if (assessment.race)
    folder.write("race" + suffix + ".csv",
                 with_result_column(race_csv(*assessment.race, *assessment.history), assessment.state));
}

}  // namespace gapstrain::cases
