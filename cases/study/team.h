// The threads of one rank.
#pragma once

#include "cases/study/row_window.h"

#include <chrono>
#include <condition_variable>
#include <deque>
#include <exception>
#include <functional>
#include <memory>
#include <mutex>
#include <thread>
#include <vector>

namespace gapstrain::cases {

// Makes rows; each thread has one of its own. A row must depend on its number only, not on the block it is made
// in: otherwise another start or another part would make another file.
struct Worker {
  virtual ~Worker() = default;
  // CSV lines, one a row, each ended by '\n'.
  virtual std::string make(std::size_t first, std::size_t count) = 0;
};

using Hire = std::function<std::unique_ptr<Worker>()>;

class Team {
 public:
  // `hire` is called in each thread, once it has something to do.
  Team(std::size_t threads, const Hire& hire);
  // Blocks begun are finished, those that wait are not begun.
  ~Team();
  Team(const Team&) = delete;
  Team& operator=(const Team&) = delete;

  std::size_t threads() const { return threads_.size(); }

  // Blocks given that no thread has begun.
  std::size_t waiting() const;
  void give(const Block& block);
  // @returns how many that were
  std::size_t drop_waiting();

  // What was made since the last call; waits for something up to `patience`.
  // @throw whatever hiring or making threw first, after all threads have ended
  std::vector<MadeBlock> collect(std::chrono::microseconds patience);

 private:
  void work(const Hire& hire);
  void work_until_ended(const Hire& hire);
  void end();

  mutable std::mutex mutex_;  // of all below but the threads
  std::condition_variable given_, made_something_;
  std::deque<Block> waiting_;
  std::vector<MadeBlock> made_;
  std::exception_ptr fault_;
  bool ended_ = false;
  std::vector<std::thread> threads_;
};

}  // namespace gapstrain::cases
