#include "models/statistics/sobol_indices.h"

#include "models/statistics/hash.h"
#include "models/statistics/statistics.h"

#include <cmath>
#include <stdexcept>

namespace gapstrain::models {

namespace {

// What the estimators sum over base points, one row each: A and B's mean and mean square about the origin, then
// for each factor the first order's term, then the total's.
Eigen::MatrixXd base_terms(const Eigen::MatrixXd& rows) {
  const Eigen::Index factors = rows.cols() - 2;
  Eigen::MatrixXd terms(rows.rows(), 2 + 2 * factors);
  const auto a = rows.col(0).array(), b = rows.col(1).array();
  terms.col(0) = 0.5 * (a + b);
  terms.col(1) = 0.5 * (a.square() + b.square());
  for (Eigen::Index i = 0; i < factors; ++i) {
    const auto difference = rows.col(2 + i).array() - a;
    terms.col(2 + i) = b * difference;
    terms.col(2 + factors + i) = 0.5 * difference.square();
  }
  return terms;
}

double variance_of(const Eigen::VectorXd& mean_terms) { return mean_terms[1] - mean_terms[0] * mean_terms[0]; }

// How often each base point is drawn when as many are drawn as there are, with replacement.
Eigen::VectorXd draws(Eigen::Index base_points, std::uint64_t seed, std::uint64_t resample) {
  Eigen::VectorXd times = Eigen::VectorXd::Zero(base_points);
  for (Eigen::Index i = 0; i < base_points; ++i) {
    const std::uint64_t bits = hash(seed, resample, static_cast<std::uint64_t>(i)) >> 32U;
    times[static_cast<Eigen::Index>((bits * static_cast<std::uint64_t>(base_points)) >> 32U)] += 1.0;
  }
  return times;
}

IndexEstimate estimate(double value, const Eigen::VectorXd& resampled) {
  const auto bounds = percentiles(resampled, {0.025, 0.975}).values;
  return {value, bounds[0], bounds[1]};
}

// The rows of the base points that have all their outcomes, one base point a row.
Eigen::MatrixXd complete_rows(const Eigen::VectorXd& outcomes, Eigen::Index factors) {
  const Eigen::Index width = factors + 2, base_points = outcomes.size() / width;
  const Eigen::MatrixXd rows = outcomes.reshaped(width, base_points).transpose();
  std::vector<Eigen::Index> complete;
  for (Eigen::Index i = 0; i < base_points; ++i) {
    if (rows.row(i).array().isInf().any()) throw std::invalid_argument("An outcome must be finite or missing.");
    if (!rows.row(i).array().isNaN().any()) complete.push_back(i);
  }
  return rows(complete, Eigen::all);
}

}  // namespace

SobolIndices sobol_indices(const Eigen::VectorXd& outcomes, Eigen::Index factors, std::uint64_t bootstrap_seed,
                           Eigen::Index resamples) {
  if (factors < 1 || outcomes.size() % (factors + 2) != 0)
    throw std::invalid_argument("Sobol' indices need factors + 2 outcomes for each base point.");
  if (resamples < 1) throw std::invalid_argument("Sobol' indices need at least one bootstrap resample.");
  Eigen::MatrixXd rows = complete_rows(outcomes, factors);
  SobolIndices found;
  found.base_points = rows.rows();
  found.missing = outcomes.size() / (factors + 2) - found.base_points;
  if (found.base_points == 0) return found;
  found.mean = rows.leftCols(2).mean();
  if (found.base_points < 2 || rows.leftCols(2).minCoeff() == rows.leftCols(2).maxCoeff()) return found;

  rows.array() -= found.mean;  // the first order's estimator is right about any origin, least noisy about this
  const Eigen::MatrixXd terms = base_terms(rows);
  const Eigen::VectorXd mean_terms = terms.colwise().mean();
  found.variance = variance_of(mean_terms);

  Eigen::MatrixXd resampled(resamples, 2 * factors);
  Eigen::Index filled = 0;
  for (std::uint64_t resample = 0; filled < resamples; ++resample) {
    const Eigen::VectorXd times = draws(found.base_points, bootstrap_seed, resample);
    const Eigen::VectorXd means = terms.transpose() * times / static_cast<double>(found.base_points);
    const double variance = variance_of(means);
    if (variance < 1e-12 * found.variance) continue;  // of few base points one can be all that is drawn
    resampled.row(filled++) = means.tail(2 * factors).transpose() / variance;
  }
  for (Eigen::Index i = 0; i < factors; ++i)
    found.factors.push_back({estimate(mean_terms[2 + i] / found.variance, resampled.col(i)),
                             estimate(mean_terms[2 + factors + i] / found.variance, resampled.col(factors + i))});
  return found;
}

}  // namespace gapstrain::models
