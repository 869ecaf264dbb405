// Margins in words, made from their values.
#pragma once

#include "models/margins/margins.h"

#include <string>

namespace gapstrain::models {

// What may fail, and how: "plate, yield", "screw S4, pull-out". `label`: a screw's; else not looked at.
std::string part_name(MarginKind kind, const std::string& label = "");

// Place, stress or force with unit, limit. Empty without a basis. @pre the margin is the construct's
std::string margin_sentence(const Construct& construct, const Margin& margin);

// Notch, finish, cycles and so on; empty where nothing is assumed.
std::string margin_assumptions(const Construct& construct, const Margin& margin);

}  // namespace gapstrain::models
