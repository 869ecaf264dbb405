// What a sample of outcomes says of the quantity: percentiles, and the share of runs of which something holds.
//
// An outcome is a finite number, or NaN where the run has none. Those without are left out and counted in
// `missing`; none reaches a result. An infinite outcome is a std::invalid_argument.
#pragma once

#include <Eigen/Core>

#include <functional>
#include <vector>

namespace gapstrain::models {

struct Sample {
  Eigen::VectorXd outcomes;  // those that there are, in their order
  Eigen::Index missing = 0;
};
Sample drop_missing(const Eigen::VectorXd& outcomes);

// One value for each probability, linear between the order statistics with the least at 0 and the greatest at 1:
// definition 7 of R. J. Hyndman and Y. Fan, Sample quantiles in statistical packages, Am. Stat. 50 (1996) 361-365.
// No values if there is no outcome. Throws std::invalid_argument for a probability outside [0, 1].
struct Percentiles {
  std::vector<double> values;
  Eigen::Index counted = 0, missing = 0;
};
Percentiles percentiles(const Eigen::VectorXd& outcomes, const std::vector<double>& probabilities);

// The share and its confidence interval, of C. J. Clopper and E. S. Pearson, Biometrika 26 (1934) 404-413: it
// holds the true share with at least the stated confidence, however few the runs.
struct Share {
  double share = 0.0, low = 0.0, high = 1.0;
  Eigen::Index counted = 0, missing = 0;
};

// Throws std::invalid_argument unless 0 <= hits <= counted, counted > 0 and confidence is between 0 and 1.
Share share_of(Eigen::Index hits, Eigen::Index counted, double confidence = 0.95);

// The share of outcomes of which `holds` is true. Throws as above if there is no outcome.
Share share_where(const Eigen::VectorXd& outcomes, const std::function<bool(double)>& holds,
                  double confidence = 0.95);

}  // namespace gapstrain::models
