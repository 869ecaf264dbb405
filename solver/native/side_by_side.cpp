#include "solver/host/side_by_side.h"

#include <algorithm>
#include <atomic>
#include <exception>
#include <future>
#include <thread>
#include <vector>

namespace gapstrain::solver {

void side_by_side(std::size_t count, const std::function<void(std::size_t)>& job) {
  std::atomic<std::size_t> next = 0;
  std::vector<std::exception_ptr> faults(count);
  const auto work = [&] {
    for (std::size_t k = next++; k < count; k = next++) {
      try {
        job(k);
      } catch (...) {
        faults[k] = std::current_exception();
      }
    }
  };
  const std::size_t cores = std::max(1U, std::thread::hardware_concurrency());
  std::vector<std::future<void>> others;
  for (std::size_t worker = 1; worker < std::min(count, cores); ++worker)
    others.push_back(std::async(std::launch::async, work));
  work();
  for (auto& other : others) other.get();
  for (const auto& fault : faults)
    if (fault) std::rethrow_exception(fault);
}

}  // namespace gapstrain::solver
