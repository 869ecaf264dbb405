#include "cases/study/row_window.h"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>
#include <utility>

namespace gapstrain::cases {

RowWindow::RowWindow(std::size_t first, std::size_t end, std::function<std::size_t(std::size_t row)> block)
    : end_(end), next_out_(first), next_back_(first), block_(std::move(block)) {}

std::optional<Block> RowWindow::hand_out(std::size_t most) {
  if (next_out_ == end_ || out_ + waiting_.size() >= most) return {};
  const std::size_t count = std::min(block_(next_out_), end_ - next_out_);
  if (count == 0) throw std::logic_error(fmt::format("no rows belong together from row {} on", next_out_));
  const Block block{next_out_, count};
  next_out_ += count;
  ++out_;
  return block;
}

void RowWindow::take_in(MadeBlock made) {
  const auto lines = static_cast<std::size_t>(std::count(made.lines.begin(), made.lines.end(), '\n'));
  if (lines != made.block.count || made.lines.back() != '\n')
    throw std::logic_error(fmt::format("{} lines were made for the {} rows from row {} on", lines,
                                       made.block.count, made.block.first));
  --out_;
  const std::size_t first = made.block.first;
  waiting_.emplace(first, std::move(made));
}

std::optional<MadeBlock> RowWindow::next() {
  const auto found = waiting_.find(next_back_);
  if (found == waiting_.end()) return {};
  MadeBlock made = std::move(found->second);
  waiting_.erase(found);
  next_back_ += made.block.count;
  return made;
}

void RowWindow::close(std::size_t unmade) {
  end_ = next_out_;
  out_ -= unmade;
}

}  // namespace gapstrain::cases
