// Text that fits a terminal; a column is one character, not one byte.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::cases {

// Characters of UTF-8 text.
std::size_t columns(std::string_view text);

// At most `width` characters, the last one an ellipsis "~" where text was lost; control characters become blanks.
std::string clip(std::string_view text, std::size_t width);

// Padded with blanks at the right to exactly `width`.
std::string pad(std::string_view text, std::size_t width);

// Lines of at most `width`, broken at blanks; all but the first are indented.
std::vector<std::string> wrap(std::string_view text, std::size_t width, std::size_t indent);

}  // namespace gapstrain::cases
