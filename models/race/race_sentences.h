// What a race comes to, in plain sentences.
#pragma once

#include "models/race/race.h"

#include <string>
#include <vector>

namespace gapstrain::models {

// Of a course whose figures are filled in.
std::string course_sentence(const RaceCourse& course);

// What keeps the gap from uniting in time; nothing when all of it does. `at_the_end`: under the loads as entered.
std::optional<std::string> union_sentence(const RaceCourse& course, const GapState& at_the_end);

// Of screws in a course.
std::string screw_sentence(const ScrewRace& screws, HealingCourse course);

// The governed course, of plate and screws the one that lasts less first, what holds union up, no healing, steady
// healing, what it hangs on, what was taken for granted.
std::vector<std::string> verdict_of(const Race& race, const Construct& construct,
                                    const RaceAssumptions& assumptions);

// What a factor, or a ratio of two, hangs on; nothing with fewer than two inputs.
std::optional<std::string> weight_sentence(const std::vector<InputWeight>& weights);

std::string comparison_sentence(const RaceComparison& comparison, const std::string& first,
                                const std::string& second);

// When an implant breaks, 5th to 95th percentile: "in week 2 to 5", "not before week 30"; nothing when it lasts.
std::optional<std::string> break_time(const RaceOutcome& outcome);

// A factor that may be anything from tiny to huge, to two digits: "4.2", "110", "more than 10000".
std::string factor_text(double factor);

}  // namespace gapstrain::models
