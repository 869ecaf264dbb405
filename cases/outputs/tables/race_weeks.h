// When the moments of a stress history come.
#pragma once

#include "models/race/race.h"

#include <vector>

namespace gapstrain::cases {

// Weeks since the operation of StressHistory::progress, if union comes in its middle week.
std::vector<double> weeks_of_moments(const models::Race& race, const models::StressHistory& history);

}  // namespace gapstrain::cases
