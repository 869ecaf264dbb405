// The rules of the trade held against a construct, for a terminal.
#pragma once

#include "models/rules/rules.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

// Broken rules first, each with its bound, what to change and the source; then those kept, and in one sentence
// those that do not apply. Lines of at most screen_columns, with line ends.
std::string review_text(const std::vector<models::RuleFinding>& findings);

// "3 of 11 rules of the trade are broken: plate span ratio, ...", for a summary; rules that do not apply do not
// count.
std::string review_sentence(const std::vector<models::RuleFinding>& findings);

}  // namespace gapstrain::cases
