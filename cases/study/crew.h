// Rows made by many threads and ranks, written in row order: the same file whatever their number.
#pragma once

#include "cases/study/ranks.h"
#include "cases/study/team.h"

#include <cstddef>
#include <functional>
#include <string_view>

namespace gapstrain::cases {

// The same on all ranks, but for `first`, of which only rank 0's counts: it alone knows what is on the disk.
struct Work {
  std::size_t first = 0, end = 0;  // rows to make: [first, end)
  // How many rows from `row` on belong together, at least 1; cut off at `end`. Made in one go by one worker, so
  // long enough for a letter (some milliseconds), short enough for an interrupt to wait for.
  std::function<std::size_t(std::size_t row)> block;
  Hire hire;
  // Blocks that are out or made before their turn, at most: it bounds the memory. 0: 16 a thread, of all ranks.
  std::size_t most_blocks = 0;
};

// Called with each block's lines in row order.
using WriteRows = std::function<void(std::string_view whole_lines, std::size_t rows)>;

struct Outcome {
  std::size_t rows = 0;   // written in this call
  bool complete = false;  // up to the end; otherwise it was stopped
};

// How many threads this rank should have: `asked`, or if that is 0 its share of the processors, at least one.
// Where mpirun binds ranks to processors, those count (`mpirun --bind-to none` frees them).
std::size_t threads_of_a_rank(std::size_t asked, const Ranks& ranks);

// Makes all rows; every rank calls it and gets the same answer. Rank 0 hands out the blocks, makes rows too, and
// alone calls `write`, in the calling thread.
// @param stop asked some times a second: when it answers true on any rank, no further block is begun; those begun
//   are finished, and written as far as no row before them is missing
// @throw what a worker or `write` threw, after this rank's threads have ended; other ranks then still wait for
//   this one (`Ranks::give_up`)
Outcome make_rows(const Work& work, std::size_t threads, Ranks& ranks, const WriteRows& write,
                  const std::function<bool()>& stop);

}  // namespace gapstrain::cases
