#include "models/parts/tightening.h"

#include <cmath>
#include <numbers>

namespace gapstrain::models {

namespace {

using std::numbers::pi;
constexpr double mean_head_radius = 0.63;  // in thread diameters
const Stress cortical_shear_strength = 51.6 * mpa;
constexpr double default_share_of_pull_out = 0.5;

}  // namespace

Force preload_of_torque(const ScrewSize& size, Moment torque, double friction) {
  const Length mean_diameter = 0.5 * (size.thread_diameter + size.core_diameter);
  const double lead_angle = std::atan((size.pitch / (pi * mean_diameter)).value());
  const double friction_angle = std::atan(friction);
  const Length lever = 0.5 * mean_diameter * std::tan(lead_angle + friction_angle) +
                       friction * mean_head_radius * size.thread_diameter;
  return torque / lever;
}

Force pull_out_strength(const ScrewSize& size, Length engaged) {
  const Length depth = 0.5 * (size.thread_diameter - size.core_diameter);
  const double thread_shape = 0.5 + (depth / size.pitch).value() / std::numbers::sqrt3;
  const double area = pi * size.thread_diameter.value() * engaged.value() * thread_shape;  // mm2
  return Force::from_value(cortical_shear_strength.value() * area);
}

std::optional<Force> core_yield(const Screw& screw) {
  if (!screw.material.yield_strength) return std::nullopt;
  const double core = screw.size.core_diameter.value();
  return Force::from_value(screw.material.yield_strength->value() * 0.25 * pi * core * core);
}

Force tightened_force(const Screw& screw, Length engaged) {
  if (screw.preload) return *screw.preload;
  if (screw.insertion_torque) return preload_of_torque(screw.size, *screw.insertion_torque);
  return default_share_of_pull_out * pull_out_strength(screw.size, engaged);
}

Length tightened_slide(const Screw& screw) {
  if (screw.slide) return *screw.slide;
  const Length thread = screw.size.thread_diameter;
  return thread <= 2.0 * mm ? 0.6 * mm : thread <= 2.7 * mm ? 0.8 * mm : 1.0 * mm;
}

}  // namespace gapstrain::models
