// Section forces along the plate, from the balance of all forces on it, and its centre line's stress.
#pragma once

#include "models/assembly/assembly.h"
#include "models/findings/findings.h"
#include "models/stress/body_stress.h"

#include <vector>

namespace gapstrain::models {

// Stations at even steps and on both sides of every hole, where the section forces jump.
std::vector<PlateStation> plate_stations(const Assembly& assembly, const solver::Solution& solution,
                                         const BodyStress& stress);

}  // namespace gapstrain::models
