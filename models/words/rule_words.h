// What a rule asks, what it found and what to change, in words made from a finding's values.
#pragma once

#include "models/rules/rules.h"

#include <string>

namespace gapstrain::models {

// "at least 8 to 10 for a simple fracture"
std::string bound_text(const RuleFinding& finding);

// This construct's, with its unit: "2 screws, 4 cortices". Of a rule that does not apply, why.
std::string figure_text(const RuleFinding& finding);

// What to change, a sentence or more; empty unless the rule is broken.
std::string advice_text(const RuleFinding& finding);

// "S1", "the screw in hole 3"
std::string name_of(const RulePart& part);
// "S1, S2 and S3"
std::string names_of(const RuleParts& parts);
// "S5 is tightened"
std::string event_text(const TooEarly& mishap);
// "the proximal fragment"
std::string fragment_name(std::size_t fragment);

}  // namespace gapstrain::models
