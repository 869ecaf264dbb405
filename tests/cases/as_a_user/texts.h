// Texts taken apart and changed.
#pragma once

#include <catch2/catch.hpp>

#include <sstream>
#include <string>
#include <vector>

namespace gapstrain::tests {

inline std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

// With `to` for `from`, which has to be there, once.
inline std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const auto place = text.find(from);
  INFO(from);
  REQUIRE(place != std::string::npos);
  REQUIRE(text.find(from, place + 1) == std::string::npos);
  return text.replace(place, from.size(), to);
}

}  // namespace gapstrain::tests
