#include "solver/elements/plastic_bending.h"

#include <cassert>
#include <cmath>
#include <numbers>

namespace gapstrain::solver {

namespace {

double share_with_core_angle(double angle) {
  const double side = std::cos(angle);
  return side * side * side + 0.375 * (angle - std::sin(4.0 * angle) / 4.0) / std::sin(angle);
}

// The share falls as the core grows.
double core_angle(double share) {
  double low = 1e-9, high = std::numbers::pi / 2.0;
  for (int halving = 0; halving < 60; ++halving) {
    const double middle = 0.5 * (low + high);
    (share_with_core_angle(middle) > share ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace

double shape_factor(BarSection section) {
  return section == BarSection::rectangle ? 1.5 : 16.0 / (3.0 * std::numbers::pi);
}

double plastic_curvature(BarSection section, double share) {
  assert(share < 1.0);
  const double of_first_yield = share * shape_factor(section);
  if (of_first_yield <= 1.0) return 0.0;
  const double whole =
      section == BarSection::rectangle ? 1.0 / std::sqrt(3.0 * (1.0 - share)) : 1.0 / std::sin(core_angle(share));
  return whole - of_first_yield;
}

}  // namespace gapstrain::solver
