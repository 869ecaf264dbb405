// Where in the unit cube of its factors a study samples, one point at a time.
#pragma once

#include "models/statistics/sobol_sequence.h"

#include <cstdint>
#include <optional>

namespace gapstrain::models {

// latin_hypercube: each factor's range cut into as many equal strata as there are points, one point in each, at a
//   random place of it, the strata of different factors matched at random (M. D. McKay, R. J. Beckman and W. J.
//   Conover, Technometrics 21 (1979) 239-245).
// sobol: see SobolSequence; at its best when the number of points is a power of two.
// random: independent points.
enum class DesignKind { latin_hypercube, sobol, random };

// A point depends on the arguments and its index alone, so points may be asked for in any order, by any number of
// threads, on any machine, and none is stored.
class Design {
 public:
  static constexpr Eigen::Index most_points = Eigen::Index{1} << 26;

  // Throws std::invalid_argument unless there is a point and a factor, at most `most_points` and, for sobol,
  // SobolSequence::most_factors.
  Design(DesignKind kind, Eigen::Index points, Eigen::Index factors, std::uint64_t seed);

  DesignKind kind() const { return kind_; }
  Eigen::Index points() const { return points_; }
  Eigen::Index factors() const { return factors_; }
  Eigen::VectorXd point(Eigen::Index index) const;  // one value a factor, in the open unit interval

 private:
  DesignKind kind_;
  Eigen::Index points_, factors_;
  std::uint64_t seed_;
  std::optional<SobolSequence> sequence_;  // sobol only
};

}  // namespace gapstrain::models
