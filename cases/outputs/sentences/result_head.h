// What stands on top of every text of a result: its state, whose it is, and by which program and when.
#pragma once

#include "cases/outputs/sentences/case_origin.h"
#include "models/assessment/result_state.h"

#include <string>

namespace gapstrain::cases {

// The state first; lines of at most `width`, with line ends and a blank line behind.
std::string result_head(const models::ResultState& state, const std::string& construct, const CaseOrigin& origin,
                        std::size_t width);

// Today, as 2026-01-31, by the machine's clock and place.
std::string today();

}  // namespace gapstrain::cases
