// What is said of work under way: on one line of a terminal that is written anew, or on a line a minute of a log.
#pragma once

#include <cstddef>
#include <optional>
#include <string>

namespace gapstrain::cases {

// "12 034 of 16 384 rows, 5 200 a second"; without the rate while none are made.
// @param done of all rows, those of earlier runs included
// @param made by this run in `seconds`: the rate is of these
std::string rows_text(std::size_t done, std::size_t all, std::size_t made, double seconds);

// "about 4 s left", from one second on.
std::string time_left_text(double seconds);

// Where progress is written. Knows no clock: it is told the seconds since the start.
class ProgressOutlet {
 public:
  enum class Kind { terminal, log };

  // @param width of a terminal, in characters
  ProgressOutlet(Kind kind, std::size_t width) : kind_(kind), width_(width) {}

  // What to write now so that `text` is seen: on a terminal over the line in place, in a log a line for each whole
  // minute that has passed since the last one, and otherwise nothing.
  std::string show(const std::string& text, double now);

  // What to write to take the line away again.
  std::string clear();

 private:
  Kind kind_;
  std::size_t width_;
  std::size_t shown_ = 0;  // characters of the line in place
  double minutes_ = 0.0;
};

}  // namespace gapstrain::cases
