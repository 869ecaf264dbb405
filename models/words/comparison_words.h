// What a comparison comes to, in plain sentences.
#pragma once

#include "models/assessment/comparison.h"

#include <string>
#include <vector>

namespace gapstrain::models {

// Borrowed.
struct ComparedConstruct {
  const Construct& construct;
  const AssessedConstruct& assessed;
};

// What fails first; then the race of each pair, by how much and how sure; then the least margins, and the rules
// broken. @pre the comparison is of these constructs
std::vector<std::string> comparison_verdict(const std::vector<ComparedConstruct>& constructs,
                                            const Comparison& comparison);

}  // namespace gapstrain::models
