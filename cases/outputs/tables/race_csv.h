// The race between bone and plate week by week, as a comma-separated table (csv_tables.h).
#pragma once

#include "models/race/race.h"

#include <string>

namespace gapstrain::cases {

// A row per course and week: bands of damage; and the gap and the plate's stress under the loads as entered, if
// union comes in its middle week.
std::string race_csv(const models::Race& race, const models::StressHistory& history);

}  // namespace gapstrain::cases
