// The stress cycle at a place: amplitude and mean.
#pragma once

#include "models/findings/findings.h"

#include <Eigen/Core>

namespace gapstrain::models {

// Between two states of plane stress (s11, s22, s12), MPa: see StressCycle.
StressCycle stress_cycle(const Eigen::Vector3d& at_rest, const Eigen::Vector3d& loaded);

}  // namespace gapstrain::models
