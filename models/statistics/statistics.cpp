#include "models/statistics/statistics.h"

#include <boost/math/distributions/binomial.hpp>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace gapstrain::models {

Sample drop_missing(const Eigen::VectorXd& outcomes) {
  std::vector<double> kept;
  kept.reserve(static_cast<std::size_t>(outcomes.size()));
  for (const double outcome : outcomes) {
    if (std::isinf(outcome)) throw std::invalid_argument("An outcome must be finite or missing.");
    if (!std::isnan(outcome)) kept.push_back(outcome);
  }
  const auto count = static_cast<Eigen::Index>(kept.size());
  return {Eigen::Map<const Eigen::VectorXd>(kept.data(), count), outcomes.size() - count};
}

Percentiles percentiles(const Eigen::VectorXd& outcomes, const std::vector<double>& probabilities) {
  auto [sorted, missing] = drop_missing(outcomes);
  Percentiles found{{}, sorted.size(), missing};
  for (const double probability : probabilities)
    if (!(probability >= 0.0 && probability <= 1.0))
      throw std::invalid_argument("The probability of a percentile must be in [0, 1].");
  if (found.counted == 0) return found;
  std::sort(sorted.begin(), sorted.end());
  for (const double probability : probabilities) {
    const double place = static_cast<double>(found.counted - 1) * probability;
    const auto below = static_cast<Eigen::Index>(place);
    const Eigen::Index above = std::min(below + 1, found.counted - 1);
    found.values.push_back(std::lerp(sorted[below], sorted[above], place - static_cast<double>(below)));
  }
  return found;
}

Share share_of(Eigen::Index hits, Eigen::Index counted, double confidence) {
  if (counted < 1) throw std::invalid_argument("A share needs at least one run.");
  if (hits < 0 || hits > counted)
    throw std::invalid_argument("A share's hits must be from none to all of the runs.");
  if (!(confidence > 0.0 && confidence < 1.0))
    throw std::invalid_argument("A confidence must be between 0 and 1.");
  const auto runs = static_cast<double>(counted), successes = static_cast<double>(hits);
  const double tail = 0.5 * (1.0 - confidence);
  using Binomial = boost::math::binomial;
  return {successes / runs, Binomial::find_lower_bound_on_p(runs, successes, tail),
          Binomial::find_upper_bound_on_p(runs, successes, tail), counted, 0};
}

Share share_where(const Eigen::VectorXd& outcomes, const std::function<bool(double)>& holds, double confidence) {
  const auto [kept, missing] = drop_missing(outcomes);
  Share share = share_of(std::count_if(kept.begin(), kept.end(), holds), kept.size(), confidence);
  share.missing = missing;
  return share;
}

}  // namespace gapstrain::models
