// The race between bone and plate, drawn.
#pragma once

#include "models/race/race.h"
#include "viz/study/study_pictures.h"

#include <filesystem>
#include <string>

namespace gapstrain::cases {

// Damage at the end of each week as a band, for a logarithmic axis.
viz::StudyCurve damage_curve(const std::string& name, const models::Race& race,
                             const models::RaceOutcome& outcome);

// Into `folder`: race, damage over the weeks in all courses with the plate's stress and the gap's tissue;
// gap_windows, what strain and pressure let form in the gap while it heals as strain allows.
// @throw std::filesystem::filesystem_error
void draw_race(const viz::Display& display, const models::Race& race, const models::StressHistory& history,
               const std::filesystem::path& folder);

}  // namespace gapstrain::cases
