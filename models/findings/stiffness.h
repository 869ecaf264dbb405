// Construct stiffness between the end sections.
#pragma once

#include "models/build/assembly.h"
#include "models/findings/findings.h"

namespace gapstrain::models {

StiffnessFindings measure_stiffness(const Assembly& assembly, const std::vector<int>& chosen);

// Work of a load on its own motion per square of the load, the inverse of a stiffness: f . u.
double compliance(const AssembledLoad& load, const solver::Solution& solution);

}  // namespace gapstrain::models
