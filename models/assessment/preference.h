// Which of several constructs for one patient to prefer, and why.
#pragma once

#include "models/assessment/comparison.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

struct Preference {
  std::optional<std::size_t> preferred;  // nothing: none holds, none is to be trusted, or they are alike
  std::string verdict;                   // one sentence, names in full
  std::vector<std::string> reasons;      // at most three, one sentence each
};

// A construct that is not to be trusted is neither preferred nor held against another. Of those that hold: the one
// whose implants outlast the others' in 95 % of the race's samples; without such a one that with the larger least
// margin, where they differ by more than the model's own error; then the one that breaks fewer rules. Where none
// holds the verdict says which load each would bear.
// @pre two or more constructs
Preference find_preference(const std::vector<Construct>& constructs,
                           const std::vector<AssessedConstruct>& assessed, const Comparison& comparison);

}  // namespace gapstrain::models
