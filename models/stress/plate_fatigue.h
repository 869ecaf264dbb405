// Where a load's equivalent fully reversed amplitude is largest in the plate.
#pragma once

#include "models/assembly/assembly.h"
#include "models/findings/findings.h"
#include "models/stress/body_stress.h"

#include <optional>

namespace gapstrain::models {

// Over all nodes and the wall's three levels, between the construct as it was made and under a load. The stress is
// the shell's own at each place, so what a hole does to it is in it: a notch counts in full (notch sensitivity 1),
// and at a thick plate's rim the shell reads up to 13 % high (rim_factors.h); both are on the safe side. The
// plate's finish is not in it. Nothing for a metal without fatigue strength.
std::optional<PlateFatigue> measure_plate_fatigue(const Assembly& assembly, const BodyStress& at_rest,
                                                  const BodyStress& loaded);

}  // namespace gapstrain::models
