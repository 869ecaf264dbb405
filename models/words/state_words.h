// What fails and what is not to be trusted, in words made from the state's values.
#pragma once

#include "models/assessment/result_state.h"

#include <string>

namespace gapstrain::models {

// "screw S4, fatigue"
std::string failed_part(const Failure& failure);

// "at the first such load", "in week 2 to 5"
std::string failure_time(const FailureTime& when);

// With place, stress and limit. @pre the failure is the construct's
std::string failure_sentence(const Construct& construct, const Failure& failure);

// What a check came to: "energy balance: 0.3, limit 1e-08".
std::string check_text(const Check& check);

// Under which loads the figures hold for the construct as it is deformed, and what that adds. @pre not empty
std::string second_order_sentence(const std::vector<LoadOnBent>& loads);

// Under which loads parts turn so far that it is followed, and by how much. @pre not empty
std::string turned_sentence(const std::vector<LoadTurned>& loads);

// Why a result is not to be trusted: "energy balance: 0.3, limit 1e-08; it should hold that ...".
std::string doubt_sentence(const Doubt& doubt);
// The same without figures.
std::string doubt_name(const Doubt& doubt);

}  // namespace gapstrain::models
