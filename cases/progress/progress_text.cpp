#include "cases/progress/progress_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace gapstrain::cases {

namespace {

// 16384 as "16 384".
std::string grouped(std::size_t number) {
  std::string digits = fmt::to_string(number);
  for (auto place = static_cast<std::ptrdiff_t>(digits.size()) - 3; place > 0; place -= 3)
    digits.insert(static_cast<std::size_t>(place), 1, ' ');
  return digits;
}

// To two digits.
std::string rate_text(double rate) {
  if (rate < 9.95) return fmt::format("{:.2g}", rate);
  const double unit = std::pow(10., std::floor(std::log10(rate)) - 1.);
  return grouped(static_cast<std::size_t>(std::round(rate / unit) * unit));
}

std::string duration_text(double seconds) {
  if (seconds < 99.5) return fmt::format("{:.0f} s", std::ceil(seconds));
  if (seconds < 99.5 * 60.) return fmt::format("{:.0f} min", seconds / 60.);
  return fmt::format("{:.0f} h", seconds / 3600.);
}

}  // namespace

std::string rows_text(std::size_t done, std::size_t all, std::size_t made, double seconds) {
  std::string count = fmt::format("{} of {} rows", grouped(done), grouped(all));
  if (made == 0 || seconds <= 0.) return count;
  return fmt::format("{}, {} a second", count, rate_text(static_cast<double>(made) / seconds));
}

std::string time_left_text(double seconds) {
  return fmt::format("about {} left", duration_text(std::max(seconds, 1.)));
}

std::string ProgressOutlet::show(const std::string& text, double now) {
  if (kind_ == Kind::log) {
    const double minutes = std::floor(now / 60.);
    if (minutes <= minutes_) return {};
    minutes_ = minutes;
    return fmt::format("after {:.0f} min: {}\n", minutes, text);
  }
  // The last column stays free: a terminal that wraps there would begin a second line.
  const std::string line = text.substr(0, width_ > 1 ? width_ - 1 : 0);
  const std::size_t former = std::exchange(shown_, line.size());
  return fmt::format("\r{}{}", line, std::string(former > line.size() ? former - line.size() : 0, ' '));
}

std::string ProgressOutlet::clear() {
  if (shown_ == 0) return {};
  return fmt::format("\r{}\r", std::string(std::exchange(shown_, 0), ' '));
}

}  // namespace gapstrain::cases
