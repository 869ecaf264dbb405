// How far the condensed answer of a construct is from one sparse solve of the same model.
#pragma once

#include "models/parts/construct.h"

namespace gapstrain::tests {

// Largest difference over all loads, each against the largest value of its kind in its body or among the links.
struct MonolithicDifference {
  double displacement = 0.0, stress = 0.0, link_force = 0.0;
};

MonolithicDifference monolithic_difference(const models::Construct& construct);

}  // namespace gapstrain::tests
