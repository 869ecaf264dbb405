// One construct seen in a mirror, from its other end, at another size, on a finer mesh: its figures stay what they
// are.
#pragma once

#include "models/parts/construct.h"

namespace gapstrain::tests {

// y to -y: the other limb.
models::Construct mirrored(const models::Construct& construct);

// Half a turn about z: what was proximal is distal. @pre supports are alike at both ends or one end is held, no
// steps that name holds, no load on the surface, no rollers
models::Construct reversed(const models::Construct& construct);

// All lengths `size` times as large under loads that strain it as before: forces with the square, moments with the
// cube.
models::Construct scaled(const models::Construct& construct, double size);

models::Construct refined(const models::Construct& construct, double times);

}  // namespace gapstrain::tests
