// Which of many constructs are best, by figures that a table holds.
#pragma once

#include <cstddef>
#include <vector>

namespace gapstrain::models {

// The figures of one wish or limit, one a row; NaN where a row has none.
using FigureColumn = std::vector<double>;

// Whether each row keeps a figure's limits; what is missing does not.
std::vector<char> keeps(const FigureColumn& figure, double least, double most);

// Rows that are the best `count`, best first: those with `kept` first, then by the lowest of the first key, of
// equal ones of the second, and so on; earlier rows first. Rows that lack a key come last.
std::vector<std::size_t> best_rows(const std::vector<char>& kept, const std::vector<FigureColumn>& keys,
                                   std::size_t count);

// The Pareto front of two figures, lower being better in both, by rising x. Of equal rows the
// first. Rows that lack a figure, or are not `allowed`, are left out.
std::vector<std::size_t> pareto_front(const std::vector<char>& allowed, const FigureColumn& x,
                                      const FigureColumn& y);

}  // namespace gapstrain::models
