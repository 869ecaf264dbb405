// The points from which Sobol' indices are found (models/statistics/sobol_indices.h).
#pragma once

#include "models/statistics/sobol_sequence.h"

#include <cstdint>

namespace gapstrain::models {

// For every base point factors + 2 rows, one after another: A, B, then AB_1 ... AB_k, where AB_i is A with factor
// i taken from B. A and B are the first and the last half of one point of a Sobol' sequence of twice as many
// factors (A. Saltelli et al., Comput. Phys. Commun. 181 (2010) 259-270). At its best when the number of base
// points is a power of two. As pure as Design.
class SaltelliDesign {
 public:
  static constexpr Eigen::Index most_factors = SobolSequence::most_factors / 2;

  // Throws std::invalid_argument unless there is a base point and a factor, at most Design::most_points rows and
  // `most_factors`. The seed means what it means to SobolSequence.
  SaltelliDesign(Eigen::Index base_points, Eigen::Index factors, std::uint64_t seed);

  Eigen::Index points() const { return base_points_ * (factors_ + 2); }
  Eigen::Index base_points() const { return base_points_; }
  Eigen::Index factors() const { return factors_; }
  Eigen::VectorXd point(Eigen::Index index) const;  // one value a factor, in the open unit interval

 private:
  Eigen::Index base_points_, factors_;
  SobolSequence sequence_;
};

}  // namespace gapstrain::models
