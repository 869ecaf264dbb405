#include "models/race/gap_state.h"

#include "models/race/tissue_ladder.h"

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

std::size_t all_quarters(const HealingGap& gap) { return (gap.stages - 1) * quarters_a_rung; }

double& window_of(PerrenWindows& windows, const SpotStrain& spot) {
  if (spot.closed) return windows.closed;
  return spot.axial <= 0.02   ? windows.bone
         : spot.axial <= 0.10 ? windows.cartilage
         : spot.axial <= 1.0  ? windows.granulation
                              : windows.none;
}

double& window_of(ClaesWindows& windows, const SpotStrain& spot) {
  constexpr double pressure = 0.15;  // MPa
  if (spot.closed) return windows.closed;
  if (spot.axial < 0.05 && std::abs(spot.pressure) < pressure) return windows.membranous;
  if (spot.axial < 0.15 && spot.pressure >= pressure) return windows.endochondral;
  return windows.fibrous;
}

Stress modulus_after(const HealingGap& gap, std::size_t quarters) {
  return modulus_on_the_way(*gap.assembly.construct.healing,
                            static_cast<double>(quarters) / static_cast<double>(all_quarters(gap)));
}

}  // namespace

std::vector<SpotStrain> most_strained(const std::vector<std::vector<SpotStrain>>& loads) {
  std::vector<SpotStrain> worst = loads.front();
  for (const auto& spots : loads)
    for (std::size_t k = 0; k < worst.size(); ++k)
      if (!spots[k].closed && (worst[k].closed || spots[k].axial > worst[k].axial)) worst[k] = spots[k];
  return worst;
}

SpotStages nearest_stages(const SpotQuarters& quarters) {
  SpotStages stages;
  for (const std::size_t count : quarters) stages.push_back((count + quarters_a_rung / 2) / quarters_a_rung);
  return stages;
}

bool bears_next(const HealingGap& gap, const SpotStrain& spot, std::size_t quarters) {
  return spot.closed || spot.axial <= strain_borne(modulus_after(gap, quarters + 1));
}

GapState summarise_gap(const HealingGap& gap, const std::vector<SpotStrain>& worst, const SpotQuarters& quarters) {
  GapState state;
  const auto& face = gap.assembly.face;
  double area = 0.0, united = 0.0, logarithm = 0.0;
  for (const auto& spot : face) area += spot.area;
  for (std::size_t k = 0; k < worst.size(); ++k) {
    const double share = face[k].area / area;
    logarithm += share * std::log(modulus_after(gap, quarters[k]).value());
    state.largest_strain = std::max(state.largest_strain, worst[k].axial);
    state.largest_shear = std::max(state.largest_shear, worst[k].shear);
    window_of(state.perren, worst[k]) += share;
    window_of(state.claes, worst[k]) += share;
    if (quarters[k] == all_quarters(gap))
      united += face[k].area;
    else if (!bears_next(gap, worst[k], quarters[k]))
      state.held += share;
  }
  state.modulus = std::exp(logarithm) * mpa;
  state.united = united / area;  // 1 without rounding when all has
  return state;
}

}  // namespace gapstrain::models
