#include "models/words/counted.h"

#include <fmt/format.h>

#include <array>

namespace gapstrain::models {

std::string counted(int count, std::string_view one) {
  return fmt::format("{} {}{}", count, one, count == 1 ? "" : "s");
}

std::string in_letters(int count) {
  constexpr std::array<std::string_view, 10> letters = {"no",   "one", "two",   "three", "four",
                                                        "five", "six", "seven", "eight", "nine"};
  const auto index = static_cast<std::size_t>(count);
  return index < letters.size() ? std::string(letters[index]) : fmt::format("{}", count);
}

}  // namespace gapstrain::models
