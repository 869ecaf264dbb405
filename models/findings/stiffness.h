// Construct stiffness between the end sections.
#pragma once

#include "models/build/insertion.h"
#include "models/findings/findings.h"

namespace gapstrain::models {

// For small loads on the construct as it was made: open places stay open, closed ones closed. @throw ModelError
StiffnessFindings measure_stiffness(const Assembly& assembly, const ConstructState& made);

// Work of a load on its own motion per square of the load, the inverse of a stiffness: f . u. Motion from `made`
// to `loaded`.
double compliance(const AssembledLoad& load, const solver::Solution& made, const solver::Solution& loaded);

}  // namespace gapstrain::models
