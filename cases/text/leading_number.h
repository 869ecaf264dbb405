// The number that a text begins with, whatever the host's library can.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace gapstrain::cases {

struct LeadingNumber {
  double value = 0.0;
  std::size_t length = 0;  // of its text
};

// Decimal, with a point, as std::from_chars reads it (no blank and no plus before it). Nothing where there is
// none, or one beyond a double.
std::optional<LeadingNumber> leading_number(std::string_view text);

}  // namespace gapstrain::cases
