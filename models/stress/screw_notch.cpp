#include "models/stress/screw_notch.h"

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

constexpr double nu = 0.3;

// Hyperbolic groove, s = a / r.
double deep_concentration(double s, NotchLoading loading) {
  const double root = std::sqrt(s + 1.0);
  if (loading == NotchLoading::tension)
    return (s * root + (0.5 + nu) * s + (1.0 + nu) * (root + 1.0)) / (s + 2.0 * nu * root + 2.0);
  const double n = 3.0 * (s + 1.0) + (1.0 + 4.0 * nu) * root + (1.0 + nu) / (1.0 + root);
  return 0.75 * (root + 1.0) * (3.0 * s - (1.0 - 2.0 * nu) * root + 4.0 + nu) / n;
}

double fatigue_factor(double core, double depth, double root_radius, double length, NotchLoading loading) {
  return 1.0 + (groove_concentration(core, depth, root_radius, loading) - 1.0) / (1.0 + length / root_radius);
}

double depth_of(const ScrewSize& size) { return 0.5 * (size.thread_diameter - size.core_diameter).value(); }

NotchLoading loading_of(const Screw& screw) {
  return screw.kind == ScrewKind::locking ? NotchLoading::bending : NotchLoading::tension;
}

bool is_strong(const Metal& metal) {
  constexpr double weak_below = 600.0;  // MPa
  return !metal.ultimate_strength || metal.ultimate_strength->value() >= weak_below;
}

}  // namespace

double groove_concentration(double core, double depth, double root_radius, NotchLoading loading) {
  const double shallow = 2.0 * std::sqrt(std::max(depth, 0.0) / root_radius);
  const double deep = deep_concentration(0.5 * core / root_radius, loading) - 1.0;
  return shallow > 0.0 && deep > 0.0 ? 1.0 + shallow * deep / std::hypot(shallow, deep) : 1.0;
}

double thread_concentration(const Screw& screw) {
  return groove_concentration(screw.size.core_diameter.value(), depth_of(screw.size),
                              thread_root_radius(screw.size).value(), loading_of(screw));
}

double notch_length(const Metal& metal) {
  constexpr double steel_from = 180e3, steel_to = 215e3, least_strength = 550.0;  // MPa
  const double modulus = metal.youngs_modulus.value();
  if (modulus < steel_from || modulus > steel_to || !metal.ultimate_strength) return 0.0;
  return 0.0254 * std::pow(2070.0 / std::max(metal.ultimate_strength->value(), least_strength), 1.8);
}

double thread_notch(const Screw& screw) {
  constexpr int steps = 40;  // to beyond the maximum
  const double radius = thread_root_radius(screw.size).value(), length = notch_length(screw.material);
  const double ratio = std::max(4.0 * length / radius, 1.0);
  double largest = 1.0;
  for (int k = 0; k <= steps; ++k)
    largest = std::max(largest, fatigue_factor(screw.size.core_diameter.value(), depth_of(screw.size),
                                               radius * std::pow(ratio, static_cast<double>(k) / steps), length,
                                               loading_of(screw)));
  return largest;
}

double head_notch(const Screw& screw) {
  const bool strong = is_strong(screw.material);
  double notch = std::max(thread_notch(screw), strong ? 2.3 : 2.1);
  if (screw.kind == ScrewKind::locking)
    notch = std::max(notch, (strong ? 3.8 : 2.8) *
                                std::pow((screw.size.core_diameter / screw.size.thread_diameter).value(), 3));
  return notch;
}

}  // namespace gapstrain::models
