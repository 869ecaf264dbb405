// The outcome of a construct that was analysed: the figures that models/layouts/construct_solver reads off forces
// alone, from findings, margins and rules.
#pragma once

#include "models/findings/findings.h"
#include "models/margins/margins.h"
#include "models/measures/outcome.h"
#include "models/rules/rules.h"

#include <vector>

namespace gapstrain::models {

// Work of the loads is left out; doubts are the checks that the findings fail. @pre findings, margins and review
// are the construct's
Outcome outcome_of(const Findings& findings, const Construct& construct, const std::vector<Margin>& margins,
                   const std::vector<RuleFinding>& review);

}  // namespace gapstrain::models
