#include "models/review/screw_holding.h"

#include "models/parts/tightening.h"

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

}  // namespace gapstrain::models
