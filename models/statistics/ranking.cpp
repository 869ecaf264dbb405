#include "models/statistics/ranking.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace gapstrain::models {

std::vector<char> keeps(const FigureColumn& figure, double least, double most) {
  std::vector<char> kept;
  for (const double value : figure) kept.push_back(value >= least && value <= most);  // false for NaN
  return kept;
}

std::vector<std::size_t> best_rows(const std::vector<char>& kept, const std::vector<FigureColumn>& keys,
                                   std::size_t count) {
  std::vector<std::size_t> rows(kept.size());
  std::iota(rows.begin(), rows.end(), std::size_t{0});
  const auto better = [&](std::size_t one, std::size_t two) {
    if (kept[one] != kept[two]) return kept[one] != 0;
    for (const auto& key : keys) {
      if (std::isnan(key[one]) != std::isnan(key[two])) return std::isnan(key[two]);
      if (key[one] != key[two] && !std::isnan(key[one])) return key[one] < key[two];
    }
    return one < two;
  };
  count = std::min(count, rows.size());
  std::partial_sort(rows.begin(), rows.begin() + static_cast<std::ptrdiff_t>(count), rows.end(), better);
  rows.resize(count);
  return rows;
}

std::vector<std::size_t> pareto_front(const std::vector<char>& allowed, const FigureColumn& x,
                                      const FigureColumn& y) {
  std::vector<std::size_t> rows;
  for (std::size_t row = 0; row < x.size(); ++row)
    if (allowed[row] != 0 && !std::isnan(x[row]) && !std::isnan(y[row])) rows.push_back(row);
  std::stable_sort(rows.begin(), rows.end(), [&](std::size_t one, std::size_t two) {
    return x[one] != x[two] ? x[one] < x[two] : y[one] < y[two];
  });
  std::vector<std::size_t> front;
  double lowest = std::numeric_limits<double>::infinity();
  for (const std::size_t row : rows) {
    if (!front.empty() && !(y[row] < lowest)) continue;
    lowest = y[row];
    front.push_back(row);
  }
  return front;
}

}  // namespace gapstrain::models
