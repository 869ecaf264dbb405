// Strain on the bone's surfaces.
#pragma once

#include "models/assembly/assembly.h"
#include "models/findings/findings.h"
#include "models/stress/body_stress.h"

#include <array>
#include <vector>

namespace gapstrain::models {

// `stress`: proximal and distal fragment.
BoneFindings measure_bone(const Assembly& assembly, const std::vector<int>& chosen,
                          const std::array<const BodyStress*, 2>& stress);

}  // namespace gapstrain::models
