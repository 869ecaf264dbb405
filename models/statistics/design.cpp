#include "models/statistics/design.h"

#include "models/statistics/hash.h"

#include <bit>
#include <cassert>
#include <stdexcept>

namespace gapstrain::models {

namespace {

// Where `value` of 0 ... count - 1 goes in a random order of these. A Feistel network of few bits permutes the
// next power of four; walking on along its cycle from a value beyond `count` brings it back (J. Black and P.
// Rogaway, Ciphers with arbitrary finite domains, CT-RSA 2002, 114-130).
std::uint64_t permuted(std::uint64_t value, std::uint64_t count, std::uint64_t key) {
  constexpr std::uint64_t rounds = 10;  // six leave an order of five values visibly uneven
  const int half = (std::bit_width(count - 1U) + 1) / 2;
  const std::uint64_t mask = (std::uint64_t{1} << half) - 1U;
  do {
    std::uint64_t left = value >> half, right = value & mask;
    for (std::uint64_t round = 0; round < rounds; ++round) {
      const std::uint64_t next = left ^ (hash(key, round, right) & mask);
      left = right;
      right = next;
    }
    value = (left << half) | right;
  } while (value >= count);
  return value;
}

// 24 bits of the hash are as many as leave the sum exact for every permitted number of points.
double place_in_stratum(std::uint64_t bits) { return (static_cast<double>(bits >> 40U) + 0.5) * 0x1p-24; }

}  // namespace

Design::Design(DesignKind kind, Eigen::Index points, Eigen::Index factors, std::uint64_t seed)
    : kind_(kind), points_(points), factors_(factors), seed_(seed) {
  if (points < 1) throw std::invalid_argument("A design needs at least one point.");
  if (points > most_points) throw std::invalid_argument("A design has at most 2^26 points.");
  if (factors < 1) throw std::invalid_argument("A design needs at least one factor.");
  if (kind != DesignKind::sobol) return;
  if (factors > SobolSequence::most_factors)
    throw std::invalid_argument("A Sobol' design has at most 3667 factors.");
  sequence_.emplace(points, factors, seed);
}

Eigen::VectorXd Design::point(Eigen::Index index) const {
  assert(index >= 0 && index < points_);
  if (sequence_) return sequence_->point(index);
  const auto counter = static_cast<std::uint64_t>(index);
  Eigen::VectorXd point(factors_);
  for (Eigen::Index i = 0; i < factors_; ++i) {
    const auto factor = static_cast<std::uint64_t>(i);
    if (kind_ == DesignKind::random) {
      point[i] = to_unit_interval(hash(seed_, counter, factor));
      continue;
    }
    const auto count = static_cast<std::uint64_t>(points_);
    const auto stratum = static_cast<double>(permuted(counter, count, scatter(seed_) ^ factor));
    point[i] = (stratum + place_in_stratum(hash(seed_, counter, factor))) / static_cast<double>(points_);
  }
  return point;
}

}  // namespace gapstrain::models
