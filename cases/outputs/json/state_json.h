// The part of findings.json on how far the result may be used.
#pragma once

#include "cases/files/json_value.h"
#include "models/assessment/result_state.h"

#include <vector>

namespace gapstrain::cases {

// @pre the state is the construct's
Json state_json(const models::Construct& construct, const models::ResultState& state);

// Limits that were passed, as values.
Json passed_limits_json(const std::vector<models::PassedLimit>& limits);

}  // namespace gapstrain::cases
