#include "cases/study/team.h"

#include <utility>

namespace gapstrain::cases {

Team::Team(std::size_t threads, const Hire& hire) {
  try {
    for (std::size_t i = 0; i < threads; ++i) threads_.emplace_back([this, hire] { work(hire); });
  } catch (...) {  // no more threads to be had
    end();
    throw;
  }
}

Team::~Team() { end(); }

std::size_t Team::waiting() const {
  const std::lock_guard lock(mutex_);
  return waiting_.size();
}

void Team::give(const Block& block) {
  {
    const std::lock_guard lock(mutex_);
    waiting_.push_back(block);
  }
  given_.notify_one();
}

std::size_t Team::drop_waiting() {
  const std::lock_guard lock(mutex_);
  const std::size_t dropped = waiting_.size();
  waiting_.clear();
  return dropped;
}

std::vector<MadeBlock> Team::collect(std::chrono::microseconds patience) {
  std::unique_lock lock(mutex_);
  made_something_.wait_for(lock, patience, [this] { return !made_.empty() || fault_; });
  if (fault_) {
    lock.unlock();
    end();
    std::rethrow_exception(fault_);
  }
  return std::exchange(made_, {});
}

void Team::work(const Hire& hire) try { work_until_ended(hire); } catch (...) {
  const std::lock_guard lock(mutex_);
  if (!fault_) fault_ = std::current_exception();
  made_something_.notify_one();
}

void Team::work_until_ended(const Hire& hire) {
  std::unique_ptr<Worker> worker;
  while (true) {
    std::unique_lock lock(mutex_);
    given_.wait(lock, [this] { return ended_ || !waiting_.empty(); });
    if (ended_) return;
    const Block block = waiting_.front();
    waiting_.pop_front();
    lock.unlock();
    if (!worker) worker = hire();
    std::string lines = worker->make(block.first, block.count);
    lock.lock();
    made_.push_back({block, std::move(lines)});
    made_something_.notify_one();
  }
}

void Team::end() {
  {
    const std::lock_guard lock(mutex_);
    ended_ = true;
  }
  given_.notify_all();
  for (auto& thread : threads_)
    if (thread.joinable()) thread.join();
}

}  // namespace gapstrain::cases
