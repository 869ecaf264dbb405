// What a layout that was looked at all over comes to, in words.
#pragma once

#include "models/findings/findings.h"
#include "models/parts/construct.h"

#include <string>

namespace gapstrain::cases {

// Lines with ends, the first behind the rank: whether it holds, is not to be trusted or FAILS, and of what; its
// least margin; its plate's peak; the rules it breaks, each with its figure. @pre the findings are the construct's
std::string layout_verdict(const std::string& rank, const models::Construct& construct,
                           const models::Findings& findings);

}  // namespace gapstrain::cases
