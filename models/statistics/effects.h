// How far each factor of a study moves an outcome: means along one factor, its swing, all factors in order.
//
// One row a run. Outcomes as in models/statistics/statistics.h: NaN is missing, left out and counted. A factor's
// value must be finite. Rows that do not fit together or values that are not allowed are a std::invalid_argument.
#pragma once

#include <Eigen/Core>

#include <optional>
#include <vector>

namespace gapstrain::models {

// Of the runs whose factor lies in [low, high].
struct GroupMean {
  double low = 0.0, high = 0.0;  // the same for a level
  Eigen::Index counted = 0, missing = 0;
  std::optional<double> mean;            // if there is an outcome
  std::optional<double> standard_error;  // of the mean, if there are two
};

// The main effect of a factor that takes these levels and no other, in their order.
std::vector<GroupMean> means_at_levels(const Eigen::VectorXd& factor, const Eigen::VectorXd& outcomes,
                                       const std::vector<double>& levels);

// The main effect of a continuous factor: bins of rising values with as many runs in each as in any other, or one
// more, those without outcome among them; so bins do not depend on the outcome. Fewer bins if there are fewer
// runs.
std::vector<GroupMean> means_in_bins(const Eigen::VectorXd& factor, const Eigen::VectorXd& outcomes,
                                     Eigen::Index bins);

// The mean outcome of the tenth of the runs in which the factor is lowest and of that in which it is highest, with
// whatever ties with the last of a tenth: of a factor with ten levels or fewer, equally frequent, its outer
// levels.
struct Swing {
  Eigen::Index factor = 0;  // column of the study's table
  double at_low = 0.0, at_high = 0.0;
  Eigen::Index counted_low = 0, counted_high = 0;
  // Of factor and outcome, equal values at their mean rank (C. Spearman, Am. J. Psychol. 15 (1904) 72-101): 1 if
  // the outcome always rises with the factor, -1 if it always falls. None if either is the same in every run.
  std::optional<double> rank_correlation;

  double span() const { return at_high - at_low; }
};

// Widest span first, of equal ones the earlier factor first. One factor a column. No swings without an outcome.
struct Tornado {
  std::vector<Swing> swings;
  Eigen::Index counted = 0, missing = 0;
};
Tornado tornado(const Eigen::MatrixXd& factors, const Eigen::VectorXd& outcomes);

}  // namespace gapstrain::models
