// How far to bend the plate over the fracture beforehand, so that the far cortex is pressed as well as the near
// one.
#pragma once

#include "models/assembly/insertion.h"
#include "models/findings/findings.h"

namespace gapstrain::models {

// The same steps with prebends from 0 to 3 mm, the one between that spreads the pressure over the fracture's faces
// most evenly (golden section round the most even of them), and the sufficient one: the least bend of the curve
// that does so within 15 % (a choice of this program), since more only strains plate and screws more. Nothing
// presses: an empty curve.
PrebendFindings find_prebend(const Assembly& assembly, const Procedure& procedure);

}  // namespace gapstrain::models
