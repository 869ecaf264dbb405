// How far long work is, on one line of a terminal.
#pragma once

#include <chrono>
#include <cstddef>
#include <string>

namespace gapstrain::cases {

// "12 034 of 16 384 rows, 5 200 a second, 1 s left"; without rate and time while none are made.
// @param done of all rows, those of earlier runs included
// @param made by this run in `seconds`: the rate is of these
std::string progress_line(std::size_t done, std::size_t all, std::size_t made, double seconds);

class RowProgress {
 public:
  // Silent when `quiet`, or when stderr is no terminal.
  RowProgress(std::size_t done, std::size_t all, bool quiet);
  // Ends the line.
  ~RowProgress();
  RowProgress(const RowProgress&) = delete;
  RowProgress& operator=(const RowProgress&) = delete;

  // Shown some times a second at most.
  void add(std::size_t rows);

 private:
  using Clock = std::chrono::steady_clock;
  void show();

  std::size_t done_before_, done_, all_;
  bool shown_;
  Clock::time_point start_ = Clock::now(), last_ = start_;
  std::size_t width_ = 0;  // of the line in place; 0: none yet
};

}  // namespace gapstrain::cases
