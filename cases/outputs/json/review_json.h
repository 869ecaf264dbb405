// The part of findings.json on the rules of the trade.
#pragma once

#include "cases/files/json_value.h"
#include "models/rules/rules.h"

#include <vector>

namespace gapstrain::cases {

// An array; `advice` only where a rule is broken. Verdicts are "kept", "broken", "not applicable".
Json review_json(const std::vector<models::RuleFinding>& findings);

}  // namespace gapstrain::cases
