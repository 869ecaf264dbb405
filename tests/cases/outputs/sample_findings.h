// Findings with every optional figure present and no two figures alike, for tests of the outputs.
#pragma once

#include "models/assessment/assess.h"

namespace gapstrain::tests {

// Per load: 3 edge points, 4 places along the plate, 2 holes, 2 screws of 5 places each, and one working-length
// variant of each sort, the inner one unavailable; 3 points of the fracture's faces, which touch in part. Three
// steps, of which the last two press.
models::Findings sample_findings(int loads);

// What findings and assessment are of, as far as sentences name it: loads 0 to 2, screws S1 and S4.
models::Construct sample_construct();

// One part that fails, one that may, one that holds; a rule broken and two kept; a plan of one screw; a race of
// three courses over two weeks, with the moments of its gap.
models::Assessment sample_assessment();

}  // namespace gapstrain::tests
