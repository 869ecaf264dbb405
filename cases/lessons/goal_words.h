// Figures, bounds and goals of a lesson in words.
#pragma once

#include "cases/figures/limits_and_charts.h"
#include "cases/files/json_value.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

inline constexpr double most_times = 100.0;  // beyond, a change is no share that says anything; ours

// A figure's value with its unit, of figures_json.h: "340 MPa".
std::string shown_text(const Json& figure);

// "gap strain" or "gap strain under \"axial 200 N\"". @pre the reference names a figure of the catalogue
std::string label_of(const std::string& text);

// "at least 0.98 and at most 1.02", in the unit that limits are entered in.
std::string bounds_as_entered(const Limit& limit);

// In the unit that people read: "at most 2 %". @pre the limit's finding names no two states
std::string bounds_as_read(const Limit& limit);

// "gap strain 5.1 % (at most 2 %)" of each, as the answer has it.
std::string goals_as_found(const std::vector<Limit>& goals, const Json& answer);

}  // namespace gapstrain::cases
