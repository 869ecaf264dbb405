// Margins in words, made from their values.
#pragma once

#include "models/margins/margins.h"
#include "models/margins/part_name.h"

#include <string>

namespace gapstrain::models {

// Place, stress or force with unit, limit. Empty without a basis. @pre the margin is the construct's
std::string margin_sentence(const Construct& construct, const Margin& margin);

// Notch, finish, cycles and so on; empty where nothing is assumed.
std::string margin_assumptions(const Construct& construct, const Margin& margin);

// Why a part or kind has no margin, and what to enter.
std::string left_out_sentence(const LeftOutMargin& left_out);

}  // namespace gapstrain::models
