// Whether a screw can be where it is to be.
#pragma once

#include "models/parts/construct.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

// What is wrong with the last of these screws in its place on the construct, beside the others: check()'s
// sentence. Steps and temporary holds are left out of account.
std::optional<std::string> fault_of_last(const Construct& construct, std::vector<Screw> screws);

}  // namespace gapstrain::models
