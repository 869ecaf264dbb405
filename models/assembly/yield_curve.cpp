#include "models/assembly/yield_curve.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace gapstrain::models {

double hardening_modulus(const Metal& metal) {
  constexpr double strain = 0.1, share_of_modulus = 0.01;
  if (metal.ultimate_strength && *metal.ultimate_strength > *metal.yield_strength)
    return (*metal.ultimate_strength - *metal.yield_strength).value() / strain;
  return share_of_modulus * metal.youngs_modulus.value();
}

solver::HardeningCurve bending_curve(const std::vector<BarSlice>& slices, const Metal& metal) {
  constexpr int points = 48;
  constexpr double last = 0.998;  // of the full moment: beyond, hardening alone
  assert(!slices.empty() && metal.yield_strength);
  const BarSlice& weakest = *std::min_element(
      slices.begin(), slices.end(),
      [](const auto& one, const auto& other) { return one.plastic_moment < other.plastic_moment; });
  const double full = weakest.plastic_moment;
  const double yield_strain = (*metal.yield_strength / metal.youngs_modulus).value();
  const auto turn_at = [&](double share) {
    double turn = 0.0;
    for (const auto& slice : slices)
      turn += slice.length * 2.0 * yield_strain / slice.depth *
              solver::plastic_curvature(slice.section, share * full / slice.plastic_moment);
    return turn;
  };
  // Full section in yield: stress rises by the plastic strain of each fibre, the moment by the hardening modulus
  // times the second moment of area, Mp / yield strength * depth / (2 shape factor).
  double weak_length = 0.0;
  for (const auto& slice : slices)
    if (slice.plastic_moment < 1.05 * full) weak_length += slice.length;
  const double slope = hardening_modulus(metal) / metal.yield_strength->value() * weakest.depth /
                       (2.0 * solver::shape_factor(weakest.section)) / weak_length;  // share by turn
  const double first = 1.0 / solver::shape_factor(weakest.section);
  solver::HardeningCurve curve;
  curve.share = {first};
  for (int k = 1; k <= points; ++k) {
    // Closer where yield begins, and towards the full moment, where the turn grows without bound.
    const double left = std::pow(std::cos(0.5 * std::numbers::pi * k / points), 2);
    const double share = last - (last - first) * left * left;
    const double turn = turn_at(share);
    curve.flow.push_back(turn * full);
    curve.share.push_back(share + slope * turn);
  }
  curve.slope = slope / full;
  return curve;
}

}  // namespace gapstrain::models
