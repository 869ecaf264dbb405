// Whether the plate would touch the bone, which this calculation lets pass through each other.
#pragma once

#include "models/build/assembly.h"

#include <array>
#include <optional>

namespace gapstrain::models {

// Least distance of the plate's underside from the bone under one load (negative: they would overlap), over the
// plate's sampled nodes that have bone below them; nothing when none has. `displacements`: of each body, (6n).
std::optional<Length> measure_plate_clearance(const Assembly& assembly,
                                              const std::array<Eigen::VectorXd, 3>& displacements);

}  // namespace gapstrain::models
