// What a comparison comes to, in plain sentences.
#pragma once

#include "models/assessment/comparison.h"

#include <string>
#include <vector>

namespace gapstrain::models {

// What fails first; then the race of each pair, by how much and how sure; then the least margins, and the rules
// broken.
std::vector<std::string> find_verdict(const std::vector<Construct>& constructs,
                                      const std::vector<AssessedConstruct>& assessed,
                                      const Comparison& comparison);

}  // namespace gapstrain::models
