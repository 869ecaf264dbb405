#include "models/findings/margin_factors.h"

#include <algorithm>

namespace gapstrain::models {

std::optional<double> MarginFactors::least() const {
  std::optional<double> least;
  for (const auto& factor : {plate_yield, plate_fatigue, screw_yield, screw_fatigue, screw_hold})
    if (factor && !(least && *least <= *factor)) least = factor;
  return least;
}

int MarginFactors::failing() const {
  const auto all = {plate_yield, plate_fatigue, screw_yield, screw_fatigue, screw_hold};
  return static_cast<int>(
      std::count_if(all.begin(), all.end(), [](const auto& factor) { return factor && *factor < 1.0; }));
}

}  // namespace gapstrain::models
