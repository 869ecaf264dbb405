// What can be ordered, and by how much a screw is chosen longer than measured.
#pragma once

#include "models/parts/units.h"

namespace gapstrain::models {

// Screws are stocked in lengths that are multiples of `screw_step`; to the measured depth `screw_allowance` is
// added before rounding up, so that the tip stands clear of the far cortex. Both common practice, no source.
struct Stock {
  Length screw_step = 2.0 * mm;
  Length screw_allowance = 2.0 * mm;
};

}  // namespace gapstrain::models
