// Rows as a study makes them, but from nothing: a function of their number, of uneven length and cost.
#pragma once

#include "cases/study/long_work.h"

#include <chrono>
#include <cstdint>
#include <memory>
#include <string>
#include <thread>

namespace gapstrain::tests {

inline const std::string toy_heading = "row,number,text";

// SplitMix64 (Steele, Lea, Flood 2014, OOPSLA: Fast splittable pseudorandom number generators).
inline std::uint64_t scrambled(std::uint64_t number) {
  number += 0x9e3779b97f4a7c15;
  number = (number ^ (number >> 30)) * 0xbf58476d1ce4e5b9;
  number = (number ^ (number >> 27)) * 0x94d049bb133111eb;
  return number ^ (number >> 31);
}

// Up to some 2 kB.
inline std::string toy_line(std::size_t row) {
  const auto number = scrambled(row);
  const std::string text(number % 16 == 0 ? number / 16 % 2000 : number % 60,
                         static_cast<char>('a' + number % 26));
  return std::to_string(row) + ',' + std::to_string(number) + ',' + text + '\n';
}

// The whole file.
inline std::string toy_file(std::size_t rows) {
  std::string text = toy_heading + '\n';
  for (std::size_t row = 0; row < rows; ++row) text += toy_line(row);
  return text;
}

struct ToyWorker : cases::Worker {
  explicit ToyWorker(std::chrono::microseconds asked_cost = {}) : cost(asked_cost) {}
  std::string make(std::size_t first, std::size_t count) override {
    std::string lines;
    for (std::size_t row = first; row < first + count; ++row) {
      if (cost.count() > 0) std::this_thread::sleep_for(cost * (scrambled(row) % 8 == 0 ? 8 : 1));
      lines += toy_line(row);
    }
    return lines;
  }
  std::chrono::microseconds cost;
};

// Blocks of 1 to 23 rows.
inline std::size_t toy_block(std::size_t row) { return 1 + scrambled(row) % 23; }

inline cases::LongWork toy_work(std::size_t threads, std::chrono::microseconds cost = {}) {
  return {toy_block, [cost] { return std::make_unique<ToyWorker>(cost); }, threads};
}

// As a command makes them that nobody watches.
inline cases::Outcome make_rows_silently(cases::StudyFolder* folder, const cases::LongWork& work,
                                         cases::Ranks& ranks) {
  cases::Progress progress({}, true);
  return cases::make_missing_rows(folder, work, ranks, progress);
}

inline cases::Study toy_study(std::size_t rows, cases::Part part = {}) { return {"toy", "f00d", rows, part}; }

}  // namespace gapstrain::tests
