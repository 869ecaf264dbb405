#include "viz/drawing/ticks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>

namespace gapstrain::viz {

double round_below(double value) {
  assert(value > 0.0);
  const double decade = std::pow(10.0, std::floor(std::log10(value)));
  const double share = value / decade * (1.0 + 1e-9);
  return decade * (share >= 5.0 ? 5.0 : share >= 2.0 ? 2.0 : 1.0);
}

double round_step(double span, int parts) {
  assert(span > 0.0 && parts > 0);
  const double least = span / parts;
  const double decade = std::pow(10.0, std::floor(std::log10(least)));
  const double share = least / decade * (1.0 - 1e-9);
  return decade * (share <= 1.0 ? 1.0 : share <= 2.0 ? 2.0 : share <= 5.0 ? 5.0 : 10.0);
}

std::vector<double> ticks_within(double low, double high, double step) {
  std::vector<double> ticks;
  const double slack = 1e-6;
  for (double k = std::ceil(low / step - slack); k <= std::floor(high / step + slack); k += 1.0)
    ticks.push_back(k * step);
  return ticks;
}

std::string tick_text(double value, double step) {
  const int decimals = std::max(0, -static_cast<int>(std::floor(std::log10(step) + 1e-9)));
  if (std::abs(value) < 0.5 * std::pow(10.0, -decimals)) value = 0.0;  // what rounds to nothing has no sign
  // The true minus sign is as wide as a digit and does not get lost.
  return fmt::format("{}{:.{}f}", value < 0.0 ? "\u2212" : "", std::abs(value), decimals);
}

std::string number_text(double value, int digits) {
  const double size = std::abs(value);
  if (size == 0.0) return "0";
  if (!(size >= 1e-4 && size < 1e7)) return fmt::format("{}{:.{}g}", value < 0.0 ? "\u2212" : "", size, digits);
  std::string text = tick_text(value, std::pow(10.0, std::floor(std::log10(size)) + 1.0 - digits));
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

}  // namespace gapstrain::viz
