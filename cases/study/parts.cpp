#include "cases/study/parts.h"

#include "cases/files/output_target.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <optional>
#include <string_view>

namespace gapstrain::cases {

namespace {

constexpr std::size_t most_parts = 1'000'000;

std::optional<std::size_t> parse_count(std::string_view text) {
  std::size_t count = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), count);
  if (fault != std::errc{} || end != text.data() + text.size()) return {};
  return count;
}

}  // namespace

Part parse_part(const std::string& text) {
  const auto slash = text.find('/');
  const auto number = parse_count(std::string_view(text).substr(0, slash));
  const auto of =
      slash == std::string::npos ? std::nullopt : parse_count(std::string_view(text).substr(slash + 1));
  if (!number || !of)
    throw OutputError(fmt::format("\"{}\" is no part; write --part 2/8 for the second of eight", text));
  if (*of == 0) throw OutputError(fmt::format("part {}: there is at least one part; write --part 1/1", text));
  if (*of > most_parts)
    throw OutputError(fmt::format("part {}: found {} parts; allowed are 1 to {}, as many as a study has rows",
                                  text, *of, most_parts));
  if (*number == 0 || *number > *of)
    throw OutputError(fmt::format("part {}: parts are counted from 1 to {}", text, *of));
  return {*number, *of};
}

std::string part_text(const Part& part) { return fmt::format("{}/{}", part.number, part.of); }

RowRange rows_of_part(const Part& part, std::size_t rows) {
  const std::size_t each = rows / part.of, longer = rows % part.of;  // the first parts are longer by one
  const auto begin = [&](std::size_t part_number) { return each * part_number + std::min(part_number, longer); };
  return {begin(part.number - 1), begin(part.number)};
}

}  // namespace gapstrain::cases
