#include "cases/text/digits.h"

#include <fmt/format.h>

#include <cmath>

namespace gapstrain::cases {

std::string two_digits(double value) {
  return std::abs(value) < 99.5 ? fmt::format("{:.2g}", value) : fmt::format("{:.0f}", value);
}

std::string two_digits_signed(double value) {
  return std::abs(value) < 99.5 ? fmt::format("{:+.2g}", value) : fmt::format("{:+.0f}", value);
}

std::string three_digits(double value) {
  const double size = std::abs(value);
  if (size >= 999.5 && size < 999999.5) return fmt::format("{:.0f}", value);
  return size >= 1e-3 || size == 0.0 ? fmt::format("{:.3g}", value) : fmt::format("{:.2g}", value);
}

std::string three_digits_up_to(double largest, double value) {
  return value > largest ? fmt::format(">{:.0f}", largest) : three_digits(value);
}

}  // namespace gapstrain::cases
