#include "models/statistics/saltelli_design.h"

#include "models/statistics/design.h"

#include <cassert>
#include <stdexcept>

namespace gapstrain::models {

namespace {

SobolSequence checked_sequence(Eigen::Index base_points, Eigen::Index factors, std::uint64_t seed) {
  if (base_points < 1) throw std::invalid_argument("A Saltelli design needs at least one base point.");
  if (factors < 1) throw std::invalid_argument("A Saltelli design needs at least one factor.");
  if (factors > SaltelliDesign::most_factors)
    throw std::invalid_argument("A Saltelli design has at most 1833 factors.");
  if (base_points > Design::most_points / (factors + 2))
    throw std::invalid_argument("A Saltelli design has at most 2^26 rows, factors + 2 for every base point.");
  return {base_points, 2 * factors, seed};
}

}  // namespace

SaltelliDesign::SaltelliDesign(Eigen::Index base_points, Eigen::Index factors, std::uint64_t seed)
    : base_points_(base_points), factors_(factors), sequence_(checked_sequence(base_points, factors, seed)) {}

Eigen::VectorXd SaltelliDesign::point(Eigen::Index index) const {
  assert(index >= 0 && index < points());
  const Eigen::VectorXd both = sequence_.point(index / (factors_ + 2));
  const Eigen::Index row = index % (factors_ + 2);
  if (row == 1) return both.tail(factors_);
  Eigen::VectorXd point = both.head(factors_);
  if (row > 1) point[row - 2] = both[factors_ + row - 2];
  return point;
}

}  // namespace gapstrain::models
