// What a margin's part is called.
#pragma once

#include "models/margins/margins.h"

#include <string>

namespace gapstrain::models {

// What may fail, and how: "plate, yield", "screw S4, pull-out". `label`: a screw's; else not looked at.
std::string part_name(MarginKind kind, const std::string& label = "");
std::string part_name(const Margin& margin);

}  // namespace gapstrain::models
