// The part of findings.json on the race between bone and plate.
#pragma once

#include "cases/files/json_value.h"
#include "cases/outputs/json/findings_keys.h"
#include "models/race/race.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

Json race_json(const models::Race& race);
// `first`, `second`: names of the constructs.
Json race_comparison_json(const models::RaceComparison& comparison, const std::string& first,
                          const std::string& second);

// Of race_json, in its order, under "race".
std::vector<FindingsKey> race_keys();

// "steady", "governed", "none"
std::string course_name(models::HealingCourse course);

}  // namespace gapstrain::cases
