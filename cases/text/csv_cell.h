// Text as one cell of a table in CSV (RFC 4180).
#pragma once

#include <string>

namespace gapstrain::cases {

// In quotes where a comma or a quote would be taken for the table's own. Line ends become blanks: a row is a line.
std::string csv_cell(std::string text);

}  // namespace gapstrain::cases
