// Findings with every optional figure present and no two figures alike, for tests of the outputs.
#pragma once

#include "models/findings/findings.h"

namespace gapstrain::tests {

// Per load: 3 edge points, 4 places along the plate, 2 holes, 2 screws of 5 places each, and one working-length
// variant of each sort, the inner one unavailable; 3 points of the fracture's faces, which touch in part. Three
// steps, of which the last two press.
models::Findings sample_findings(int loads);

}  // namespace gapstrain::tests
