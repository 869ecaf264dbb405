// What a race comes to, in plain sentences.
#pragma once

#include "models/race/race.h"

#include <string>
#include <vector>

namespace gapstrain::models {

// How it ends for the plate.
std::string course_sentence(const RaceCourse& course);

// What keeps the gap from uniting in time where strain governs; nothing when all of it does.
std::optional<std::string> union_sentence(const Race& race);

// Of screws in a course.
std::string screw_sentence(const ScrewRace& screws, HealingCourse course);

// The governed course, of plate and screws the one that lasts less first, what holds union up, no healing, steady
// healing, what it hangs on, what was taken for granted.
std::vector<std::string> race_verdict(const Race& race);
// The first of them, followed by what holds union up.
std::string race_in_short(const Race& race);

// Why there is no race, and what to enter.
std::string no_race_sentence(const NoRace& no_race);

// What a factor, or a ratio of two, hangs on; nothing with fewer than two inputs.
std::optional<std::string> weight_sentence(const std::vector<InputWeight>& weights);

// Who outlasts whom, and by how much; says when the difference is within the uncertainty.
std::string comparison_sentence(const RaceComparison& comparison, const std::string& first,
                                const std::string& second);

// When an implant breaks: "in week 2 to 5", "not before week 30".
std::string weeks_text(double from, const std::optional<double>& to);

// A factor that may be anything from tiny to huge, to two digits: "4.2", "110", "more than 10000".
std::string factor_text(double factor);

}  // namespace gapstrain::models
