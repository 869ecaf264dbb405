// The low-discrepancy sequence of I. M. Sobol', any point of it at once.
#pragma once

#include <Eigen/Core>

#include <cstdint>
#include <vector>

namespace gapstrain::models {

// Direction numbers: S. Joe and F. Y. Kuo, Constructing Sobol sequences with better two-dimensional projections,
// SIAM J. Sci. Comput. 30 (2008) 2635-2654, as Boost.Random has them. The first point is kept, as A. B. Owen, On
// dropping the first Sobol' point, MCQMC 2020, 71-86, asks for: without it the leading 2^m points are no net.
class SobolSequence {
 public:
  static constexpr Eigen::Index most_factors = 3667;

  // The first `points` of the sequence. A seed above zero shifts it digitally, by other random bits in each
  // factor; zero shifts it by half a cell, 2^-(m+1) for 2^m >= points, so that the points are unmoved otherwise
  // but off 0. With many factors and few points these lean towards the corner at 0: give a seed.
  SobolSequence(Eigen::Index points, Eigen::Index factors, std::uint64_t seed);

  Eigen::VectorXd point(Eigen::Index index) const;  // in the open unit cube, in O(log2(points) factors)

 private:
  Eigen::Index points_;
  std::vector<std::uint64_t> shift_;                    // one a factor
  std::vector<std::vector<std::uint64_t>> directions_;  // for each binary digit of the index, one a factor
};

}  // namespace gapstrain::models
