#include "cases/text/columns.h"

#include <algorithm>

namespace gapstrain::cases {

namespace {

bool begins_character(char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }

}  // namespace

std::size_t columns(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), begins_character));
}

std::string clip(std::string_view text, std::size_t width) {
  std::string result;
  const bool fits = columns(text) <= width;
  std::size_t count = 0;
  for (const char c : text) {
    if (begins_character(c)) ++count;
    if (!fits && count == width) break;
    result += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
  }
  return fits ? result : result + "~";
}

std::string pad(std::string_view text, std::size_t width) {
  std::string result = clip(text, width);
  return result.append(width - columns(result), ' ');
}

std::vector<std::string> wrap(std::string_view text, std::size_t width, std::size_t indent) {
  std::vector<std::string> lines{""};
  bool line_is_empty = true;
  while (!text.empty()) {
    const auto blank = std::min(text.find(' '), text.size());
    const std::string word = clip(text.substr(0, blank), width - indent);
    text.remove_prefix(std::min(blank + 1, text.size()));
    if (word.empty()) continue;
    if (!line_is_empty && columns(lines.back()) + 1 + columns(word) > width) {
      lines.emplace_back(indent, ' ');
      line_is_empty = true;
    }
    lines.back() += (line_is_empty ? "" : " ") + word;
    line_is_empty = false;
  }
  return lines;
}

std::vector<std::string> split_lines(std::string_view text) {
  std::vector<std::string> lines;
  while (!text.empty()) {
    const auto end = std::min(text.find('\n'), text.size());
    lines.emplace_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return lines;
}

std::string beside(std::string_view heading, std::string_view text) {
  constexpr std::size_t margin = 8;
  std::string lines;
  for (const auto& line : wrap(text, screen_columns - margin, 0))
    lines += pad(lines.empty() ? heading : "", margin) + line + "\n";
  return lines;
}

}  // namespace gapstrain::cases
