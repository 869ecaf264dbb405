// Limits that a construct passes while it is made or under its loads, as plain sentences.
#pragma once

#include "models/assembly/insertion.h"
#include "models/findings/findings.h"

#include <string>
#include <vector>

namespace gapstrain::models {

// Worst first: screws past yield or pull-out, preload lost, a fracture that gapes, a plate that slips, slots used
// up, holds that are still in. `made`: after the last step; `loaded`: under each load, in the order of `loads`.
std::vector<std::string> find_limits(const Assembly& assembly, const StepState& made,
                                     const std::vector<ConstructState>& loaded,
                                     const std::vector<LoadFindings>& loads);

}  // namespace gapstrain::models
