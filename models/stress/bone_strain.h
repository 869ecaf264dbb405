// Strain on the bone's surfaces.
#pragma once

#include "models/assembly/assembly.h"
#include "models/findings/findings.h"
#include "models/stress/body_stress.h"

#include <vector>

namespace gapstrain::models {

// `stress`: of all bodies by their numbers (body_numbers.h); plates' is not looked at.
BoneFindings measure_bone(const Assembly& assembly, const std::vector<int>& chosen,
                          const std::vector<const BodyStress*>& stress);

}  // namespace gapstrain::models
