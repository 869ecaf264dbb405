#include "cases/study/progress.h"

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::cases {

namespace {

constexpr auto interval = std::chrono::milliseconds(250);

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

std::string time_text(double seconds) {
  if (seconds < 99.5) return fmt::format("{:.0f} s", std::ceil(seconds));
  if (seconds < 99.5 * 60.) return fmt::format("{:.0f} min", seconds / 60.);
  return fmt::format("{:.0f} h", seconds / 3600.);
}

}  // namespace

std::string progress_line(std::size_t done, std::size_t all, std::size_t made, double seconds) {
  const std::string count = fmt::format("{} of {} rows", grouped(done), grouped(all));
  if (made == 0 || seconds <= 0.) return count;
  const double rate = static_cast<double>(made) / seconds;
  return fmt::format("{}, {} a second, {} left", count, rate_text(rate),
                     time_text(static_cast<double>(all - done) / rate));
}

RowProgress::RowProgress(std::size_t done, std::size_t all, bool quiet)
    : done_before_(done), done_(done), all_(all), shown_(!quiet && isatty(STDERR_FILENO) != 0) {}

RowProgress::~RowProgress() {
  if (width_ == 0) return;
  show();
  fmt::print(stderr, "\n");
}

void RowProgress::add(std::size_t rows) {
  done_ += rows;
  if (!shown_ || Clock::now() - last_ < interval) return;
  show();
}

void RowProgress::show() {
  last_ = Clock::now();
  const std::chrono::duration<double> passed = last_ - start_;
  const std::string line = progress_line(done_, all_, done_ - done_before_, passed.count());
  fmt::print(stderr, "\r{:<{}}", line, width_);  // blanks over a longer one
  width_ = std::max(width_, line.size());
}

}  // namespace gapstrain::cases
