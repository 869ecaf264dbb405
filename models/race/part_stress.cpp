#include "models/race/part_stress.h"

#include "models/parts/load_parts.h"
#include "models/stress/stress_cycle.h"

#include <algorithm>

namespace gapstrain::models {

namespace {

// How far a factor is on its way from 1 to the end of its band that it lies towards.
double way_to_end(const PartBand& band, double factor) {
  if (factor == 1.0 || !is_open(band)) return 0.0;
  const double end = factor < 1.0 ? band.low : band.high;
  return (factor - 1.0) / (end - 1.0);
}

void add_change(ShaftForce& force, double share, const ShaftForce& end, const ShaftForce& entered) {
  force.force += share * (end.force - entered.force);
  force.moment += share * (end.moment - entered.moment);
}

void add_change(PlaceForces& forces, double share, const PlaceForces& end, const PlaceForces& entered) {
  forces.plate += share * (end.plate - entered.plate);
  for (std::size_t k = 0; k < forces.screws.size(); ++k) {
    ScrewCuts& screw = forces.screws[k];
    add_change(screw.head, share, end.screws[k].head, entered.screws[k].head);
    for (std::size_t c = 0; c < screw.cortices.size(); ++c)
      add_change(screw.cortices[c], share, end.screws[k].cortices[c], entered.screws[k].cortices[c]);
  }
}

}  // namespace

PlaceForces between(const PartStates& states, const std::array<PartBand, 3>& bands, const PartFactors& factors) {
  PlaceForces forces = states.entered;
  for (std::size_t part = 0; part < factors.size(); ++part) {
    const double share = way_to_end(bands[part], factors[part]);
    if (share == 0.0) continue;
    const auto& [low, high] = states.ends[part];
    add_change(forces, share, factors[part] < 1.0 ? low : high, states.entered);
  }
  return forces;
}

std::vector<StressCycle> cycles_of(const PlaceForces& at_rest, const PlaceForces& loaded,
                                   const std::vector<CoreSection>& cores) {
  std::vector<StressCycle> cycles;
  cycles.reserve(static_cast<std::size_t>(loaded.plate.cols()) + 2 * cores.size());
  for (Eigen::Index k = 0; k < loaded.plate.cols(); ++k)
    cycles.push_back(stress_cycle(at_rest.plate.col(k), loaded.plate.col(k)));
  std::vector<ScrewCycles> screws;
  for (std::size_t k = 0; k < cores.size(); ++k)
    screws.push_back(screw_cycles(at_rest.screws[k], loaded.screws[k], cores[k]));
  for (const auto cycle : {&ScrewCycles::head, &ScrewCycles::thread})
    for (const auto& screw : screws) cycles.push_back(screw.*cycle);
  return cycles;
}

double between(const PartRatios& ratios, const std::array<PartBand, 3>& bands, const PartFactors& factors) {
  constexpr double least = 0.05;
  double ratio = 1.0;
  for (std::size_t part = 0; part < factors.size(); ++part) {
    const double share = way_to_end(bands[part], factors[part]);
    const auto& [low, high] = ratios.ends[part];
    ratio += share * ((factors[part] < 1.0 ? low : high) - 1.0);
  }
  return std::max(ratio, least);
}

}  // namespace gapstrain::models
