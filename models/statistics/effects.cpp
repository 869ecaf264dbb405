#include "models/statistics/effects.h"

#include "models/statistics/statistics.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <stdexcept>

namespace gapstrain::models {

namespace {

void check_rows(Eigen::Index factor_rows, bool factor_finite, Eigen::Index outcome_rows) {
  if (factor_rows != outcome_rows)
    throw std::invalid_argument("A factor must have a value for every outcome, and no more.");
  if (!factor_finite) throw std::invalid_argument("A factor's values must be finite.");
}

GroupMean group_mean(double low, double high, const std::vector<double>& outcomes) {
  const auto [kept, missing] =
      drop_missing(Eigen::Map<const Eigen::VectorXd>(outcomes.data(), static_cast<Eigen::Index>(outcomes.size())));
  GroupMean group{low, high, kept.size(), missing, {}, {}};
  if (group.counted > 0) group.mean = kept.mean();
  if (group.counted > 1) {
    const auto count = static_cast<double>(group.counted);
    group.standard_error = std::sqrt((kept.array() - *group.mean).square().sum() / (count * (count - 1.0)));
  }
  return group;
}

// Rows by rising value; equal values keep their order.
std::vector<Eigen::Index> rising(const Eigen::VectorXd& values) {
  std::vector<Eigen::Index> order(static_cast<std::size_t>(values.size()));
  std::iota(order.begin(), order.end(), Eigen::Index{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](Eigen::Index a, Eigen::Index b) { return values[a] < values[b]; });
  return order;
}

// Ranks about their mean, of values in rising `order`; equal values share the mean of theirs.
Eigen::VectorXd centred_ranks(const Eigen::VectorXd& values, const std::vector<Eigen::Index>& order) {
  Eigen::VectorXd ranks(values.size());
  for (auto first = order.begin(); first != order.end();) {
    const auto last =
        std::find_if(first, order.end(), [&](Eigen::Index row) { return values[row] != values[*first]; });
    const double rank =
        0.5 * static_cast<double>((first - order.begin()) + (last - order.begin()) - values.size());
    for (; first != last; ++first) ranks[*first] = rank;
  }
  return ranks;
}

std::optional<double> correlation(const Eigen::VectorXd& a, const Eigen::VectorXd& b) {
  const double scale = a.norm() * b.norm();
  if (scale == 0.0) return {};
  return std::clamp(a.dot(b) / scale, -1.0, 1.0);
}

// Of factor and outcomes with at least one row.
Swing swing(Eigen::Index column, const Eigen::VectorXd& factor, const Eigen::VectorXd& outcomes,
            const Eigen::VectorXd& outcome_ranks) {
  const auto order = rising(factor);
  const std::size_t tenth = (order.size() + 9) / 10;
  const double low = factor[order[tenth - 1]], high = factor[order[order.size() - tenth]];
  Swing swing{column, 0.0, 0.0, 0, 0, correlation(centred_ranks(factor, order), outcome_ranks)};
  for (Eigen::Index row = 0; row < factor.size(); ++row) {
    if (factor[row] <= low) {
      swing.at_low += outcomes[row];
      ++swing.counted_low;
    }
    if (factor[row] >= high) {
      swing.at_high += outcomes[row];
      ++swing.counted_high;
    }
  }
  swing.at_low /= static_cast<double>(swing.counted_low);
  swing.at_high /= static_cast<double>(swing.counted_high);
  return swing;
}

}  // namespace

std::vector<GroupMean> means_at_levels(const Eigen::VectorXd& factor, const Eigen::VectorXd& outcomes,
                                       const std::vector<double>& levels) {
  check_rows(factor.size(), factor.allFinite(), outcomes.size());
  std::vector<std::vector<double>> at_level(levels.size());
  for (Eigen::Index row = 0; row < factor.size(); ++row) {
    const auto level = std::find(levels.begin(), levels.end(), factor[row]);
    if (level == levels.end()) throw std::invalid_argument("A factor takes a value that is none of its levels.");
    at_level[static_cast<std::size_t>(level - levels.begin())].push_back(outcomes[row]);
  }
  std::vector<GroupMean> groups;
  for (std::size_t i = 0; i < levels.size(); ++i) groups.push_back(group_mean(levels[i], levels[i], at_level[i]));
  return groups;
}

std::vector<GroupMean> means_in_bins(const Eigen::VectorXd& factor, const Eigen::VectorXd& outcomes,
                                     Eigen::Index bins) {
  check_rows(factor.size(), factor.allFinite(), outcomes.size());
  if (bins < 1) throw std::invalid_argument("A factor needs at least one bin.");
  const auto order = rising(factor);
  const std::size_t count = std::min(static_cast<std::size_t>(bins), order.size());
  std::vector<GroupMean> groups;
  for (std::size_t bin = 0; bin < count; ++bin) {
    const std::size_t first = order.size() * bin / count, end = order.size() * (bin + 1) / count;
    std::vector<double> inside;
    for (std::size_t place = first; place < end; ++place) inside.push_back(outcomes[order[place]]);
    groups.push_back(group_mean(factor[order[first]], factor[order[end - 1]], inside));
  }
  return groups;
}

Tornado tornado(const Eigen::MatrixXd& factors, const Eigen::VectorXd& outcomes) {
  check_rows(factors.rows(), factors.allFinite(), outcomes.size());
  const auto [kept, missing] = drop_missing(outcomes);
  Tornado all{{}, kept.size(), missing};
  if (all.counted == 0) return all;
  std::vector<Eigen::Index> rows;
  for (Eigen::Index row = 0; row < outcomes.size(); ++row)
    if (!std::isnan(outcomes[row])) rows.push_back(row);
  const Eigen::VectorXd ranks = centred_ranks(kept, rising(kept));
  for (Eigen::Index column = 0; column < factors.cols(); ++column)
    all.swings.push_back(swing(column, factors(rows, column), kept, ranks));
  std::stable_sort(all.swings.begin(), all.swings.end(),
                   [](const Swing& a, const Swing& b) { return std::abs(a.span()) > std::abs(b.span()); });
  return all;
}

}  // namespace gapstrain::models
