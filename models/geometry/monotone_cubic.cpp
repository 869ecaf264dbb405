#include "models/geometry/monotone_cubic.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <stdexcept>
#include <utility>

namespace gapstrain::models {

MonotoneCubic::MonotoneCubic(std::vector<double> knots, std::vector<double> values, EndSlope first, EndSlope last)
    : knots_(std::move(knots)), values_(std::move(values)), slopes_(knots_.size(), 0.0) {
  if (knots_.empty() || knots_.size() != values_.size())
    throw std::invalid_argument("An interpolation needs at least one knot and as many values as knots.");
  if (std::adjacent_find(knots_.begin(), knots_.end(), std::greater_equal<>()) != knots_.end())
    throw std::invalid_argument("The knots of an interpolation must rise.");
  const std::size_t pieces = knots_.size() - 1;
  if (pieces == 0) return;

  std::vector<double> chords(pieces);
  for (std::size_t i = 0; i < pieces; ++i) chords[i] = (values_[i + 1] - values_[i]) / (knots_[i + 1] - knots_[i]);
  for (std::size_t i = 1; i < pieces; ++i)
    if (chords[i - 1] * chords[i] > 0.0) slopes_[i] = 0.5 * (chords[i - 1] + chords[i]);
  if (first == EndSlope::secant) slopes_.front() = chords.front();
  if (last == EndSlope::secant) slopes_.back() = chords.back();

  // Slopes inside the circle of radius 3 chords are sufficient for monotony (the paper's section 4).
  for (std::size_t i = 0; i < pieces; ++i) {
    const double length = std::hypot(slopes_[i], slopes_[i + 1]);
    const double limit = 3.0 * std::abs(chords[i]);
    if (length > limit) {
      slopes_[i] *= limit / length;
      slopes_[i + 1] *= limit / length;
    }
  }
}

bool MonotoneCubic::is_outside(double x) const {
  return knots_.size() == 1 || x < knots_.front() || x > knots_.back();
}

MonotoneCubic::Local MonotoneCubic::local(double x) const {
  const auto above = std::upper_bound(knots_.begin() + 1, knots_.end() - 1, x);
  const auto i = static_cast<std::size_t>(above - knots_.begin()) - 1;
  const double width = knots_[i + 1] - knots_[i];
  return {(x - knots_[i]) / width, width, values_[i], values_[i + 1], slopes_[i], slopes_[i + 1]};
}

double MonotoneCubic::value(double x) const {
  if (is_outside(x)) return x < knots_.front() ? values_.front() : values_.back();
  const auto [t, width, value_0, value_1, slope_0, slope_1] = local(x);
  const double s = 1.0 - t;
  // Written about value_0 so that equal values give back exactly that value.
  return value_0 + (value_1 - value_0) * t * t * (3.0 - 2.0 * t) + width * t * s * (slope_0 * s - slope_1 * t);
}

double MonotoneCubic::slope(double x) const {
  if (is_outside(x)) return 0.0;
  const auto [t, width, value_0, value_1, slope_0, slope_1] = local(x);
  const double s = 1.0 - t;
  return 6.0 * t * s * (value_1 - value_0) / width + slope_0 * s * (1.0 - 3.0 * t) + slope_1 * t * (3.0 * t - 2.0);
}

double MonotoneCubic::second_derivative(double x) const {
  if (is_outside(x)) return 0.0;
  const auto [t, width, value_0, value_1, slope_0, slope_1] = local(x);
  return (6.0 * (1.0 - 2.0 * t) * (value_1 - value_0) / width + slope_0 * (6.0 * t - 4.0) +
          slope_1 * (6.0 * t - 2.0)) /
         width;
}

}  // namespace gapstrain::models
