// What has bent for good.
#pragma once

#include "models/assembly/insertion.h"
#include "models/findings/findings.h"

#include <vector>

namespace gapstrain::models {

inline const Angle turn_worth_saying = 0.05 * degree;

// Screws and plates whose worst place has turned by more than that, each at that place; screws of `in` only
// (positions in assembly.screws), in their order, then plates.
std::vector<BentPart> bent_parts(const Assembly& assembly, const std::vector<int>& in,
                                 const solver::Yielded& yielded);

}  // namespace gapstrain::models
