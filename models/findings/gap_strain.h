// Interfragmentary motion and strain round the fracture edge.
#pragma once

#include "models/build/assembly.h"
#include "models/findings/findings.h"

namespace gapstrain::models {

GapFindings measure_gap(const Assembly& assembly, const solver::Solution& solution);

// Perren's windows by strain magnitude: 2 %, 10 %, 100 %. Perren 1979, Clin Orthop 138:175 (limits as quoted in
// surgical texts).
PerrenWindows perren_windows(const std::vector<GapPoint>& edge);

}  // namespace gapstrain::models
