// Text that fits a terminal; a column is one character, not one byte.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::cases {

// Of a terminal.
inline constexpr std::size_t screen_lines = 40, screen_columns = 100;

// Characters of UTF-8 text.
std::size_t columns(std::string_view text);

// At most `width` characters, the last one an ellipsis "~" where text was lost; control characters become blanks.
std::string clip(std::string_view text, std::size_t width);

// Padded with blanks at the right to exactly `width`.
std::string pad(std::string_view text, std::size_t width);

// Lines of at most `width`, broken at blanks; all but the first are indented.
std::vector<std::string> wrap(std::string_view text, std::size_t width, std::size_t indent);

// A text's lines without their ends.
std::vector<std::string> split_lines(std::string_view text);

// The text as lines of at most screen_columns with line ends, right of a margin in which the first one has the
// heading.
std::string beside(std::string_view heading, std::string_view text);

}  // namespace gapstrain::cases
