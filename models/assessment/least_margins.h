// What constructs have least in hand, against each other.
#pragma once

#include "models/assessment/assess.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace gapstrain::models {

struct LeastMargins {
  std::vector<std::size_t> incomplete;  // constructs without a kind of margin that others have: left out for all
  struct One {
    std::size_t construct = 0;
    Margin margin;
  };
  // Of the kinds that are known of all; nothing unless two have one.
  struct Ends {
    One most, least;
    double ratio = 1.0;
    bool told_apart = false;  // by more than the model's own error of both
  };
  std::optional<Ends> ends;
};

// @pre one or more
LeastMargins compare_least_margins(const std::vector<AssessedConstruct>& assessed);

}  // namespace gapstrain::models
