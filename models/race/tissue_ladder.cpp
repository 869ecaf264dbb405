#include "models/race/tissue_ladder.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace gapstrain::models {

namespace {

struct Elongation {
  double modulus, strain;
};

}  // namespace

Stress modulus_on_the_way(const Healing& healing, double share) {
  return healing.at_first.youngs_modulus *
         std::pow((healing.at_union.youngs_modulus / healing.at_first.youngs_modulus).value(), share);
}

std::vector<Tissue> tissue_ladder(const Healing& healing, int rungs, int beyond) {
  std::vector<Tissue> ladder;
  for (int rung = 0; rung < rungs + beyond; ++rung) {
    const double share = static_cast<double>(rung) / (rungs - 1), inside = std::min(share, 1.0);
    ladder.push_back({fmt::format("healing tissue {} of {}", rung + 1, rungs), modulus_on_the_way(healing, share),
                      (1.0 - inside) * healing.at_first.poissons_ratio + inside * healing.at_union.poissons_ratio,
                      "between " + healing.at_first.name + " and " + healing.at_union.name});
  }
  return ladder;
}

double strain_borne(Stress modulus) {
  const auto of = [](const char* tissue) { return find_tissue(tissue)->youngs_modulus.value(); };
  static const std::array<Elongation, 3> known = {
      {{of("granulation-tissue"), 1.0}, {of("cartilage"), 0.1}, {of("immature-bone"), 0.02}}};
  const double value = std::clamp(modulus.value(), known.front().modulus, known.back().modulus);
  const Elongation& low = value < known[1].modulus ? known[0] : known[1];
  const Elongation& high = value < known[1].modulus ? known[1] : known[2];
  const double share = std::log(value / low.modulus) / std::log(high.modulus / low.modulus);
  return low.strain * std::pow(high.strain / low.strain, share);
}

}  // namespace gapstrain::models
