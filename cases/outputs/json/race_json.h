// The part of findings.json on the race between bone and plate.
#pragma once

#include "cases/files/json_value.h"
#include "cases/outputs/json/output_key.h"
#include "models/race/race.h"

#include <string>

namespace gapstrain::cases {

Json race_json(const models::Race& race);
// `first`, `second`: names of the constructs.
Json race_comparison_json(const models::RaceComparison& comparison, const std::string& first,
                          const std::string& second);

// Why there is none.
Json no_race_json(const models::NoRace& no_race);

// Of race_json and race_comparison_json, in their order; see output_key.h.
OutputKeys race_keys();
OutputKeys race_comparison_keys();

// "steady", "governed", "none"
std::string course_name(models::HealingCourse course);

}  // namespace gapstrain::cases
