// What must be known of a result before any of its figures is used. Every output carries it.
#pragma once

#include "models/findings/findings.h"
#include "models/parts/construct.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

enum class Standing {
  holds,       // no known margin is below 1, and healing is likely to win
  fails,       // at least one is, or an implant breaks before union in most samples
  not_trusted  // a check of the solution failed: its figures may be anything
};

struct Failure {
  std::string part;              // "screw S4, fatigue"
  std::string load;              // under which; empty: over all of a day's
  std::optional<double> factor;  // strength over demand; nothing when the race alone says so
  std::string when;              // "at the first such load", "in week 2 to 5"
  std::string sentence;          // the margin's, with place, stress and limit
};

struct ResultState {
  std::vector<std::string> not_trusted;  // why, a sentence each; empty: all checks are passed
  std::vector<Failure> fails;            // worst first, one a kind
  std::vector<std::string> limits;       // that the steps or a load pass without breaking anything, worst first
  std::vector<Estimate> estimated;       // sizes that were not measured
  Standing standing() const;
};

struct Assessment;
// Of margins, race and findings. @pre findings and assessment are the construct's
ResultState state_of(const Construct& construct, const Findings& findings, const Assessment& assessment);

// Of a case before anything is calculated: only what was estimated is known.
ResultState state_of_case(const Construct& construct);

// Why the findings are not to be trusted, a sentence each failed check.
std::vector<std::string> failed_checks(const Trust& trust);

}  // namespace gapstrain::models
