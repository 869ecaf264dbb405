// What acts in a load case and what holds the bone, in the words of the case file.
#pragma once

#include "models/parts/loading.h"

#include <string>
#include <vector>

namespace gapstrain::models {

// "axial 130 N", "force[0] (0, -40, 12) N at 30 mm, 90 deg round"; what is zero is left out.
std::vector<std::string> acting_parts(const LoadCase& load);

// "proximal ball, distal ball", with the load line's two points where it is given by them; of four-point bending
// its rollers.
std::string supports_text(const LoadCase& load);

}  // namespace gapstrain::models
