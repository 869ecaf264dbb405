// Limits that a construct passes while it is made or under its loads.
#pragma once

#include "models/assembly/insertion.h"
#include "models/findings/findings.h"

#include <vector>

namespace gapstrain::models {

// A place that the steps pressed together gapes when it opens by more: less is less than faces are rough.
inline constexpr double gaping_opening = 0.01;  // mm

// Worst first: screws past yield or pull-out, preload lost, a fracture that gapes, a plate that slips, slots used
// up, holds that are still in. `made`: after the last step; `loaded`: under each load, in the order of `loads`.
std::vector<PassedLimit> find_limits(const Assembly& assembly, const StepState& made,
                                     const std::vector<ConstructState>& loaded,
                                     const std::vector<LoadFindings>& loads);

}  // namespace gapstrain::models
