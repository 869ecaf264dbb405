// The plate of the plated tube alone, all holes open, against three-dimensional solids (reference as in
// plated_tube.h), and a plain bar against beam theory by the formula of ASTM F382 (algebra re-derived).
#pragma once

#include "tests/solid/comparison.h"

namespace gapstrain::tests {

std::vector<Comparison> compare_perforated_bar();

}  // namespace gapstrain::tests
