// The findings on one screen, for a surgeon: what cannot be trusted first, then what fails, limits that were
// passed and an order of steps that defeats itself, then the worst of each part and what each has in hand.
#pragma once

#include "cases/outputs/case_origin.h"
#include "cases/outputs/columns.h"
#include "models/review/assess.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

// At most screen_lines of at most screen_columns. `not_finite` as from make_findings_json.
// `folder` is where the files are.
std::string summarise(const models::Findings& findings, const models::Assessment& assessment,
                      const CaseOrigin& origin, const std::vector<std::string>& not_finite,
                      const std::string& folder);

// One sentence per failed trust check; none when all is well.
std::vector<std::string> doubts(const models::Findings& findings, const std::vector<std::string>& not_finite);

}  // namespace gapstrain::cases
