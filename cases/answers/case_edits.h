// What a hand does to a case: a screw put in, taken out or moved, steps in another order, a load made larger.
#pragma once

#include "cases/answers/case_json.h"

#include <string>

namespace gapstrain::cases {

// The case's [[screw]] tables, one a screw with its label and `hole` where tables had several holes.
Json screw_tables(const Json& entered);

// The state's tables after an edit; `entered`: the case as it was entered, whose screws say what a new one is
// like. Edits are told in DEVELOPERS.md, "The page". Labels stay, and steps name what is there.
// @throw RequestError: a sentence on what cannot be done
Json edited(const Json& entered, Json state, const Json& edit);

}  // namespace gapstrain::cases
