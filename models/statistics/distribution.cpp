#include "models/statistics/distribution.h"

#include <boost/math/distributions/lognormal.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/triangular.hpp>
#include <boost/math/distributions/uniform.hpp>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace gapstrain::models {

namespace {

namespace math = boost::math;

void require(bool holds, const char* sentence) {
  if (!holds) throw std::invalid_argument(sentence);
}

bool finite(std::initializer_list<double> values) {
  return std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); });
}

math::uniform checked(const Uniform& shape) {
  require(finite({shape.low, shape.high}), "A uniform distribution's low and high must be finite numbers.");
  require(shape.low < shape.high, "A uniform distribution's low must be below its high.");
  return math::uniform(shape.low, shape.high);
}

math::normal checked(const Normal& shape) {
  require(finite({shape.mean, shape.standard_deviation}),
          "A normal distribution's mean and standard deviation must be finite numbers.");
  require(shape.standard_deviation > 0.0, "A normal distribution's standard deviation must be above zero.");
  return math::normal(shape.mean, shape.standard_deviation);
}

// With variance of the logarithm log(1 + (sd/mean)^2).
math::lognormal checked(const Lognormal& shape) {
  require(finite({shape.mean, shape.standard_deviation}),
          "A lognormal distribution's mean and standard deviation must be finite numbers.");
  require(shape.mean > 0.0, "A lognormal distribution's mean must be above zero.");
  require(shape.standard_deviation > 0.0, "A lognormal distribution's standard deviation must be above zero.");
  const double variation = shape.standard_deviation / shape.mean;
  const double variance = std::log1p(variation * variation);
  require(variance > 0.0 && std::isfinite(variance),
          "A lognormal distribution's mean and standard deviation must be of comparable size.");
  return math::lognormal(std::log(shape.mean) - 0.5 * variance, std::sqrt(variance));
}

math::triangular checked(const Triangular& shape) {
  require(finite({shape.low, shape.mode, shape.high}),
          "A triangular distribution's low, mode and high must be finite numbers.");
  require(shape.low < shape.high, "A triangular distribution's low must be below its high.");
  require(shape.low <= shape.mode && shape.mode <= shape.high,
          "A triangular distribution's mode must not be outside its low and high.");
  return math::triangular(shape.low, shape.mode, shape.high);
}

// Probabilities below the bounds or, where the bounds lie in the upper half and these would all be close to one,
// above them: so a far tail keeps its digits.
struct Cut {
  bool from_above;
  double at_least, at_most;
};

template <typename Shape>
Cut cut(const Shape& shape, double least, double most) {
  const auto [low, high] = math::support(shape);
  const bool from_above = least > math::median(shape);
  const auto probability = [&, low = low, high = high](double bound) {
    if (bound <= low) return from_above ? 1.0 : 0.0;
    if (bound >= high) return from_above ? 0.0 : 1.0;
    return from_above ? math::cdf(math::complement(shape, bound)) : math::cdf(shape, bound);
  };
  const Cut cut{from_above, probability(least), probability(most)};
  require(cut.at_least != cut.at_most, "A distribution's bounds must leave some of it.");
  return cut;
}

void check_bounds(const Distribution& distribution) {
  require(distribution.least < distribution.most, "A distribution's lower bound must be below its upper bound.");
}

}  // namespace

void check_distribution(const Distribution& distribution) {
  check_bounds(distribution);
  std::visit([&](const auto& shape) { cut(checked(shape), distribution.least, distribution.most); },
             distribution.shape);
}

double quantile(const Distribution& distribution, double probability) {
  require(probability > 0.0 && probability < 1.0, "A probability must be between 0 and 1.");
  check_bounds(distribution);
  const auto [least, most] = std::pair(distribution.least, distribution.most);
  return std::visit(
      [&, least = least, most = most](const auto& parameters) {
        const auto shape = checked(parameters);
        const auto [from_above, at_least, at_most] = cut(shape, least, most);
        const double scaled = at_least + probability * (at_most - at_least);
        const double value =
            from_above ? math::quantile(math::complement(shape, scaled)) : math::quantile(shape, scaled);
        return std::clamp(value, least, most);  // against rounding of the last digit only
      },
      distribution.shape);
}

}  // namespace gapstrain::models
