#include "cases/text/leading_number.h"

#include <charconv>
#include <cmath>
#include <cstdlib>
#include <string>
#include <system_error>
#include <version>

namespace gapstrain::cases {

#ifdef __cpp_lib_to_chars
std::optional<LeadingNumber> leading_number(std::string_view text) {
  LeadingNumber number;
  const auto [rest, fault] = std::from_chars(text.data(), text.data() + text.size(), number.value);
  if (fault != std::errc{}) return std::nullopt;
  number.length = static_cast<std::size_t>(rest - text.data());
  return number;
}
#else
// A library without it (LLVM's before its release 20): the same grammar, then the C library's conversion, which
// rounds to the nearest as well. Such hosts have no locale but C's.
namespace {

std::size_t digits_from(std::string_view text, std::size_t at) {
  while (at < text.size() && text[at] >= '0' && text[at] <= '9') ++at;
  return at;
}

std::size_t length_of_number(std::string_view text) {
  const std::size_t begin = text.starts_with('-') ? 1 : 0;
  std::size_t end = digits_from(text, begin), digits = end - begin;
  if (end < text.size() && text[end] == '.') {
    const std::size_t behind = digits_from(text, end + 1);
    digits += behind - end - 1;
    if (digits > 0) end = behind;
  }
  if (digits == 0) return 0;
  if (end < text.size() && (text[end] == 'e' || text[end] == 'E')) {
    const std::size_t sign = end + 1 < text.size() && (text[end + 1] == '-' || text[end + 1] == '+') ? 1 : 0;
    const std::size_t behind = digits_from(text, end + 1 + sign);
    if (behind > end + 1 + sign) end = behind;
  }
  return end;
}

}  // namespace

std::optional<LeadingNumber> leading_number(std::string_view text) {
  const std::size_t length = length_of_number(text);
  if (length == 0) return std::nullopt;
  const double value = std::strtod(std::string(text.substr(0, length)).c_str(), nullptr);
  if (!std::isfinite(value)) return std::nullopt;
  return LeadingNumber{value, length};
}
#endif

}  // namespace gapstrain::cases
