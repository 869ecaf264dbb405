// Which rows are out to be made, and those that came back before their turn.
#pragma once

#include <cstddef>
#include <functional>
#include <map>
#include <optional>
#include <string>

namespace gapstrain::cases {

// Consecutive rows [first, first + count).
struct Block {
  std::size_t first = 0, count = 0;
};

// A block as CSV lines, one a row, each ended by '\n'.
struct MadeBlock {
  Block block;
  std::string lines;
};

// Hands out blocks in row order and gives them back in row order, whatever order they are made in. One thread's.
class RowWindow {
 public:
  // @param block how many rows from a row on belong together, at least 1; cut off at `end`
  RowWindow(std::size_t first, std::size_t end, std::function<std::size_t(std::size_t row)> block);

  // None when all are handed out, after close(), or while `most` blocks are out or wait for their turn.
  std::optional<Block> hand_out(std::size_t most);

  // @throw std::logic_error if there is not one line a row
  void take_in(MadeBlock made);

  // The next block in row order, if it is back.
  std::optional<MadeBlock> next();

  // Nothing more is handed out; `unmade` blocks of those that are out will not come back.
  void close(std::size_t unmade);

  // Nothing is out and nothing will be.
  bool over() const { return out_ == 0 && next_out_ == end_; }

 private:
  std::size_t end_, next_out_, next_back_;
  std::function<std::size_t(std::size_t)> block_;
  std::size_t out_ = 0;
  std::map<std::size_t, MadeBlock> waiting_;  // by first row
};

}  // namespace gapstrain::cases
