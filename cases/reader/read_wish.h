// A finding, and which way is better.
#pragma once

#include "cases/toml/section.h"
#include "models/parts/layout_rules.h"

#include <optional>
#include <string>

namespace gapstrain::cases {

// "least peak_stress" or "most axial_stiffness", number `index` of a list. Nothing when a fault was reported.
std::optional<models::FigureWish> read_wish(const Section& section, std::string_view key, std::size_t index,
                                            const std::string& text);

}  // namespace gapstrain::cases
