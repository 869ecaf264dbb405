// What margins, rules and the race come to, in a few sentences for the screen.
#pragma once

#include "models/review/assess.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

// Parts that fail, a sentence each, worst first; none when all hold.
std::vector<std::string> failure_sentences(const models::Assessment& assessment);

// One sentence each: the race, the margins in order, the rules.
std::vector<std::string> assessment_sentences(const models::Assessment& assessment);

}  // namespace gapstrain::cases
