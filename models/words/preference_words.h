// Which construct to prefer and why, in plain sentences.
#pragma once

#include "models/assessment/preference.h"

#include <string>
#include <vector>

namespace gapstrain::models {

// One sentence. `names`: of the constructs, in their order.
std::string preference_sentence(const Preference& preference, const std::vector<std::string>& names);

// At most three, a sentence each: how each stands, those that do not hold first; then the rules broken.
std::vector<std::string> preference_reasons(const Preference& preference, const std::vector<std::string>& names);

}  // namespace gapstrain::models
