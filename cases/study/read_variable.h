// [[vary]] of a study file.
#pragma once

#include "cases/study/variable.h"
#include "cases/toml/section.h"

#include <vector>

namespace gapstrain::cases {

// All [[vary]]; those with a fault are reported and left out.
// @param tree the case that they vary
std::vector<Variable> read_variables(const std::vector<Section>& varies, const Table& tree);

}  // namespace gapstrain::cases
