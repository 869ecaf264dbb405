// A study split by hand into parts: one run and one folder each.
#pragma once

#include <cstddef>
#include <string>

namespace gapstrain::cases {

struct Part {
  std::size_t number = 1, of = 1;  // from 1
  bool operator==(const Part&) const = default;
};

// [first, end)
struct RowRange {
  std::size_t first = 0, end = 0;
};

// "3/8".
// @throw OutputError if the text is no part
Part parse_part(const std::string& text);

std::string part_text(const Part& part);

// Consecutive rows of a study of `rows`; the parts follow one another, and differ by one row at most.
RowRange rows_of_part(const Part& part, std::size_t rows);

}  // namespace gapstrain::cases
