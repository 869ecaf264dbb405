// What a construct's assessment leaves as texts and tables, each with the state of the result on it.
#pragma once

#include "cases/files/output_folder.h"
#include "cases/outputs/sentences/case_origin.h"
#include "models/assessment/assess.h"

#include <string>

namespace gapstrain::cases {

// margins.txt, review.txt, plan.txt and, with a race, race.csv; of several constructs in one folder with "_A" and
// so on behind the stem.
// @throw OutputError
void write_assessment(OutputFolder& folder, const std::string& suffix, const models::Assessment& assessment,
                      const models::Construct& construct, const CaseOrigin& origin);

}  // namespace gapstrain::cases
