#include "models/margins/screw_holding.h"

#include "models/parts/tightening.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace gapstrain::models {

double factor_of_both(double share_of_one, double share_of_other) {
  const double both = std::hypot(share_of_one, share_of_other);
  return both > 0.0 ? 1.0 / both : std::numeric_limits<double>::infinity();
}

std::optional<ScrewHolding> screw_holding(const ScrewSize& size, const std::vector<CortexForce>& cortices) {
  if (cortices.empty()) return std::nullopt;
  ScrewHolding holding;
  Length engaged;
  double pressed_hardest = -1.0;
  for (const auto& cortex : cortices) {
    engaged += cortex.wall;
    holding.pull += cortex.pull;
    const Force bearing =
        Force::from_value(bearing_strength_of_cortex.value() * size.thread_diameter.value() * cortex.wall.value());
    const double share = (cortex.shear / bearing).value();
    if (share <= pressed_hardest) continue;
    pressed_hardest = share;
    holding.far = cortex.far;
    holding.shear = cortex.shear;
    holding.bearing = bearing;
  }
  holding.pull_out = pull_out_strength(size, engaged);
  holding.factor = factor_of_both((holding.pull / holding.pull_out).value(), pressed_hardest);
  return holding;
}

const HeldForce* find_held(const std::vector<HeldForce>& all, ScrewId screw) {
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const HeldForce& held) { return held.screw == screw; });
  return found == all.end() ? nullptr : &*found;
}

LeastHold least_hold(const Screw& screw, const std::vector<std::vector<CortexForce>>& one_a_load,
                     const HeldForce* held) {
  LeastHold least;
  for (std::size_t load = 0; load < one_a_load.size(); ++load) {
    const auto holding = screw_holding(screw.size, one_a_load[load]);
    if (!holding || !(holding->factor < least.factor)) continue;
    least = {holding->factor, load, one_a_load[load].size() == 1 && screw.kind != ScrewKind::lag};
  }
  if (held != nullptr && held->of_pull_out && *held->of_pull_out > 0.0 && 1.0 / *held->of_pull_out < least.factor)
    least = {1.0 / *held->of_pull_out, std::nullopt, false};
  return least;
}

}  // namespace gapstrain::models
