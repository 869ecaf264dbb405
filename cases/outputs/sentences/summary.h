// The findings on one screen, for a surgeon: the state of the result first, then the verdict, the least margin and
// what it hangs on, then the worst of each part over all loads, and the loads, the hardest first. What there is no
// room for is the harmless.
#pragma once

#include "cases/outputs/sentences/case_origin.h"
#include "cases/text/columns.h"
#include "models/assessment/assess.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

// At most screen_lines of at most screen_columns. `folder` is where the files are.
std::string summarise(const models::Construct& construct, const models::Findings& findings,
                      const models::Assessment& assessment, const CaseOrigin& origin, const std::string& folder);

}  // namespace gapstrain::cases
