// Stress in the plate: peak with place, every hole, the centre line.
#pragma once

#include "models/assembly/assembly.h"
#include "models/findings/findings.h"
#include "models/stress/body_stress.h"

#include <vector>

namespace gapstrain::models {

PlateFindings measure_plate(const Assembly& assembly, const std::vector<int>& chosen,
                            const solver::Solution& solution, const BodyStress& stress);

// Of each node of the plate, the hole whose rim it is on: 1-based, 0 off the rims.
std::vector<int> rims_of_nodes(const Assembly& assembly);

// Peak von Mises stress over the plate's sample (rims and a sample elsewhere), without recovering the field: for
// comparing layouts. MPa.
double sampled_peak(const Assembly& assembly, const solver::Solution& solution);

}  // namespace gapstrain::models
