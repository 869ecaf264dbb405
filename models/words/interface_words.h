// What becomes of a construct at both bounds of how bone holds its screws, in words.
#pragma once

#include "models/assessment/result_state.h"

#include <string>

namespace gapstrain::models {

// "bonded to bone", "soft in bone (0.5 of the bonded stiffness)".
std::string interface_name(double stiffness);

// "it holds at both bounds of screws in bone", without a full stop.
std::string bounds_verdict_words(BoundsVerdict verdict);

// Both bounds with least margin and gap strain, and what they come to; one sentence or two.
std::string bounds_sentence(const InterfaceBounds& bounds);

// Least margin and gap strain by the stages of a course that the case states, and what rests on it; without a full
// stop. @pre not empty
std::string softening_sentence(const std::vector<InterfaceWeek>& softening);
// From where to where, and the least margin on the way. @pre not empty
std::string softening_in_short(const std::vector<InterfaceWeek>& softening);

// Where the soft bound turns what is said of the construct: what fails there, without a full stop.
// @pre bounds.warns
std::string soft_bound_warning(const InterfaceBounds& bounds);
std::string soft_bound_warning_in_short(const InterfaceBounds& bounds);

}  // namespace gapstrain::models
