// Linear buckling of the construct under one load.
#pragma once

#include "models/assembly/insertion.h"

#include <optional>

namespace gapstrain::models {

// Smallest positive factor on the load at which the construct, linear up to there, gives way: K v = factor (-K_G)
// v with the geometric stiffness of plate and bone and of the rigid arms between the bone's ends and the points at
// which a load holds and presses them (the short screws' own is left out). Ritz values of a
// block Krylov space of the condensed solve with what touches under the load (Golub and Van Loan 2013, Matrix
// Computations, section 10.3). Nothing when the load only stiffens the construct, or its factor is beyond
// `ceiling` (of no interest); NaN, which no check passes, when it is not found. Relative accuracy 1e-3. `made`:
// before the load. `loaded`: under it. @throw ModelError where the construct is free to move
std::optional<double> measure_buckling(const Assembly& assembly, const StepState& made, const AssembledLoad& load,
                                       const ConstructState& loaded, double ceiling = 1e4);

}  // namespace gapstrain::models
