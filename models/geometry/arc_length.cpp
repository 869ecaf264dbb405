// The table of arc length round the largest section, which maps the unrolled coordinate to the ellipse's
// parameter.
#include "models/geometry/bone_shape.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gapstrain::models {

namespace {

constexpr int table_steps = 720;
constexpr double table_step = 2.0 * std::numbers::pi / table_steps;

// Gauss-Legendre, two points.
template <class Function>
double integral(Function f, double from, double to) {
  const double middle = 0.5 * (from + to), half = 0.5 * (to - from), point = half / std::numbers::sqrt3;
  return half * (f(middle - point) + f(middle + point));
}

}  // namespace

void BoneShape::tabulate_arc_length() {
  // Widths may rise while others fall, so the largest section need not be a station.
  constexpr int samples = 200;
  const auto around = [&](double x) {
    const BoneSection here = section(x);
    double sum = 0.0;
    for (int i = 0; i < 64; ++i) sum += mid_speed(here, 2.0 * std::numbers::pi * i / 64);
    return sum;
  };
  double most = 0.0;
  for (int i = 0; i <= samples; ++i) {
    const double x = length_ * i / samples;
    if (const double here = around(x); here > most) {
      most = here;
      largest_ = section(x);
    }
  }

  arc_lengths_.assign(1, 0.0);
  const auto speed = [&](double angle) { return mid_speed(largest_, angle); };
  for (int i = 0; i < table_steps; ++i)
    arc_lengths_.push_back(arc_lengths_.back() + integral(speed, i * table_step, (i + 1) * table_step));
  perimeter_ = arc_lengths_.back();
}

double BoneShape::arc_length(double parameter) const {
  const int i = std::clamp(static_cast<int>(parameter / table_step), 0, table_steps - 1);
  const auto speed = [&](double angle) { return mid_speed(largest_, angle); };
  return arc_lengths_[static_cast<std::size_t>(i)] + integral(speed, i * table_step, parameter);
}

double BoneShape::parameter(double u) const {
  const double wrapped = u - perimeter_ * std::floor(u / perimeter_);
  const auto above = std::upper_bound(arc_lengths_.begin() + 1, arc_lengths_.end() - 1, wrapped);
  const auto i = above - arc_lengths_.begin() - 1;
  // Newton's method on the arc length; the curve is nearly straight within a table_step.
  double angle = static_cast<double>(i) * table_step;
  for (int k = 0; k < 3; ++k) angle += (wrapped - arc_length(angle)) / mid_speed(largest_, angle);
  return angle;
}

}  // namespace gapstrain::models
