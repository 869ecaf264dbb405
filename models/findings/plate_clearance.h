// Whether the plate would touch the bone, which this calculation lets pass through each other.
#pragma once

#include "models/build/assembly.h"

#include <array>
#include <optional>

namespace gapstrain::models {

struct PlateClearance {
  Length at_rest;     // between the plate's underside and the bone, at the place that comes closest
  Length under_load;  // negative: they would overlap
};

// Place of least clearance under one load, over the plate's sampled nodes that have bone below them; nothing when
// none has. `displacements`: of each body, (6n).
std::optional<PlateClearance> measure_plate_clearance(const Assembly& assembly,
                                                      const std::array<Eigen::VectorXd, 3>& displacements);

}  // namespace gapstrain::models
