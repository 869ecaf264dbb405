#include "models/statistics/sobol_sequence.h"

#include "models/statistics/hash.h"

#include <boost/random/sobol.hpp>

#include <bit>
#include <cassert>

namespace gapstrain::models {

SobolSequence::SobolSequence(Eigen::Index points, Eigen::Index factors, std::uint64_t seed) : points_(points) {
  assert(points > 0 && factors > 0 && factors <= most_factors);
  const int digits = std::bit_width(static_cast<std::uint64_t>(points - 1));
  const auto count = static_cast<std::size_t>(factors);
  boost::random::sobol engine(count);
  for (int digit = 0; digit < digits; ++digit) {
    // The engine's n-th point after its seed, counted from zero, is the sum of the directions in the Gray code of
    // n + 1; that of 2^(digit + 1) - 1 has one digit.
    engine.seed((std::uint64_t{2} << digit) - 2U);
    auto& direction = directions_.emplace_back(count);
    engine.generate(direction.begin(), direction.end());
  }
  for (std::size_t factor = 0; factor < count; ++factor)
    shift_.push_back(seed == 0 ? std::uint64_t{1} << (63 - digits) : hash(seed, factor, 0));
}

Eigen::VectorXd SobolSequence::point(Eigen::Index index) const {
  assert(index >= 0 && index < points_);
  const auto counter = static_cast<std::uint64_t>(index);
  std::vector<std::uint64_t> bits = shift_;
  for (std::uint64_t gray = counter ^ (counter >> 1U); gray != 0; gray &= gray - 1U) {
    const auto& direction = directions_[static_cast<std::size_t>(std::countr_zero(gray))];
    for (std::size_t factor = 0; factor < bits.size(); ++factor) bits[factor] ^= direction[factor];
  }
  Eigen::VectorXd point(static_cast<Eigen::Index>(bits.size()));
  for (std::size_t factor = 0; factor < bits.size(); ++factor)
    point[static_cast<Eigen::Index>(factor)] = to_unit_interval(bits[factor]);
  return point;
}

}  // namespace gapstrain::models
