// The door to threads, where the host has some (solver/native); one after another where it has none
// (solver/plain).
#pragma once

#include <cstddef>
#include <functional>

namespace gapstrain::solver {

// Does job(0) to job(count - 1), each once, and returns when all are done. Jobs must not wait for one another; no
// more run at a time than the machine has cores. What a job throws is thrown on; of several the one of the least
// number.
void side_by_side(std::size_t count, const std::function<void(std::size_t)>& job);

}  // namespace gapstrain::solver
