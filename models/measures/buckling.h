// Linear buckling of the construct under one load.
#pragma once

#include "models/assembly/insertion.h"

#include <optional>
#include <vector>

namespace gapstrain::models {

// Smallest positive factor on the load at which the construct, linear up to there, gives way: K v = factor (-K_G)
// v with the geometric stiffness of plate and bone and of the rigid arms between the bone's ends and the points at
// which a load holds and presses them (the short screws' own is left out). Subspace iteration on the
// condensed solve with what touches under the load. `displacements`: what the load brought, of each body (6n),
// linear in it. Nothing when the load only stiffens the construct, or its factor is beyond `ceiling` (of no
// interest); NaN, which no check passes, when it is not found. Relative accuracy 1e-3.
std::optional<double> measure_buckling(const Assembly& assembly, const AssembledLoad& load,
                                       const ConstructState& loaded,
                                       const std::vector<Eigen::VectorXd>& displacements, double ceiling = 1e4);

}  // namespace gapstrain::models
