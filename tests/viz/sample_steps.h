// Made-up but lifelike steps: a plate is fixed to one fragment, a screw slides in a slot and presses the fracture,
// then the rest is locked.
#pragma once

#include "models/findings/fields.h"
#include "models/findings/findings.h"

#include <vector>

namespace gapstrain::tests {

// Pressure that falls from the near cortex, `near` MPa, to the far one, `far` MPa, or to an opening for negative
// `far`.
models::FaceFindings sample_face(double near, double far);

models::CompressionFindings sample_compression();
std::vector<models::StepFields> sample_step_fields();  // one a step of sample_compression()

models::PrebendFindings sample_prebend();

}  // namespace gapstrain::tests
