// What to order and to do as one page of plain text, to be printed and taken along.
#pragma once

#include "models/review/plan.h"

#include <string>

namespace gapstrain::cases {

inline constexpr std::size_t page_lines = 60, page_columns = 80;

// At most page_lines of at most page_columns, with line ends. `name` of the patient or case and `file` head it.
// What a long list leaves no room for is counted in a line that says so; plate, screws and cautions are always
// there.
std::string plan_text(const models::Plan& plan, const std::string& name, const std::string& file);

}  // namespace gapstrain::cases
