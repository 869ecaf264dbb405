#include "cases/files/file_names.h"

#include <fmt/format.h>

#include <cctype>

namespace gapstrain::cases {

std::string file_stem(std::string_view name) {
  constexpr std::size_t longest = 60;  // file systems allow 255 bytes, of which suffixes take some
  std::string stem;
  for (const char c : name.substr(0, longest)) {
    const bool plain = std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '-' || c == '.';
    if (plain || stem.empty() || stem.back() != '_') stem += plain ? c : '_';
  }
  while (!stem.empty() && stem.back() == '_') stem.pop_back();
  return stem;
}

std::string load_stem(std::size_t index, std::string_view name) {
  const std::string stem = file_stem(name);
  return fmt::format("{}{}{}", index + 1, stem.empty() || stem.front() == '_' ? "" : "_", stem);
}

}  // namespace gapstrain::cases
