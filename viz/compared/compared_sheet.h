// What the pictures of several constructs share.
#pragma once

#include "viz/compared/compared_pictures.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::viz {

// @throw std::invalid_argument with fewer than two or more than four.
void check_compared(const std::vector<ComparedConstruct>& constructs);

// The load's name where it is the same for all.
std::optional<std::string> common_load(const std::vector<ComparedConstruct>& constructs);

}  // namespace gapstrain::viz
