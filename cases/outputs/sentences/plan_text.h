// What to order and to do as one page of plain text, to be printed and taken along.
#pragma once

#include "cases/outputs/sentences/case_origin.h"
#include "models/assessment/result_state.h"
#include "models/plan/plan.h"

#include <string>

namespace gapstrain::cases {

inline constexpr std::size_t page_lines = 60, page_columns = 80;

// At most page_lines of at most page_columns, with line ends; the state of the result stands on top, `name` of the
// patient or case under it. What a long list leaves no room for is counted in a line that says so; state, plate,
// screws and cautions are always there. A length that rests on an estimate is not offered to order.
std::string plan_text(const models::Plan& plan, const models::ResultState& state, const std::string& name,
                      const CaseOrigin& origin);

}  // namespace gapstrain::cases
