// Tissues on the way from the first day to union, and the strain that each of them bears.
#pragma once

#include "models/parts/healing.h"

#include <vector>

namespace gapstrain::models {

// Young's modulus at a share of the way from the first day to union: it grows in equal ratios.
Stress modulus_on_the_way(const Healing& healing, double share);

// So many tissues, from the first day's to that of union in equal ratios of Young's modulus; Poisson's ratio goes
// along in equal steps. `beyond`: as many more, in the same ratios. @pre at least two rungs
std::vector<Tissue> tissue_ladder(const Healing& healing, int rungs, int beyond = 0);

// Elongation at which a tissue of this stiffness ruptures: 100 % granulation tissue, 10 % cartilage, 2 % bone
// (Perren 1979, Clin Orthop 138:175, as quoted in surgical texts), which stand at the moduli of the catalogue's
// granulation tissue, cartilage and immature bone. Straight between them in the logarithms of both (a choice of
// this program, no source), constant beyond.
double strain_borne(Stress modulus);

}  // namespace gapstrain::models
