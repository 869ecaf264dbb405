// Whether the order of the steps defeats itself.
#pragma once

#include "models/assembly/insertion.h"
#include "models/findings/findings.h"

#include <optional>

namespace gapstrain::models {

// Moves, for each step that presses (a compression or lag screw tightened, a clamp closed), every earlier step of
// the pressed fragments' other holds behind it, one alone and all together, and carries the procedure out again.
// Says which one costs most when an order gives at least a tenth more force across the fracture than `reached`.
std::optional<OrderAdvice> advise_order(const Assembly& assembly, const Procedure& procedure, Force reached);

}  // namespace gapstrain::models
