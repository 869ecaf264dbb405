// Strain on the bone's surfaces.
#pragma once

#include "models/assembly/assembly.h"
#include "models/findings/findings.h"
#include "models/stress/body_stress.h"

#include <vector>

namespace gapstrain::models {

// Strain is clear of a screw this far from the rim of its core, and is smoothed over this many walls around a
// place: a shell tells little of what changes within a wall's thickness. Ours: so that mirroring, reversing,
// scaling and a finer mesh move it little (DEVELOPERS.md); the highest node a wall off the rim moved by 11 %.
inline constexpr double core_diameters_clear = 1.0, walls_smoothed = 1.5;

// `stress`: of all bodies by their numbers (body_numbers.h); plates' is not looked at.
BoneFindings measure_bone(const Assembly& assembly, const std::vector<int>& chosen,
                          const std::vector<const BodyStress*>& stress);

}  // namespace gapstrain::models
