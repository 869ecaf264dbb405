// The rules of the trade, held against a construct. They look at geometry and steps only: no stress.
#pragma once

#include "models/parts/construct.h"

#include <string>
#include <vector>

namespace gapstrain::models {

// How a construct treats its fracture, as far as rules tell apart.
enum class Treatment {
  compression,     // compression screws, or else a fracture clamp while it is plated, press the fragments together
  neutralisation,  // lag screws press, the plate protects them
  bridging         // the plate spans the fracture; it may move a little
};

// A comminuted fracture is bridged, and so is a simple one of which more than 1 mm of gap is left when compression
// screws have used up their slides (the longest of each fragment; in practice it is less).
Treatment treatment_of(const Construct& construct);

enum class Verdict { kept, broken, not_applicable };

struct RuleFinding {
  std::string rule;    // "plate span ratio"
  std::string bound;   // "at least 8 for a simple fracture"
  std::string figure;  // this construct's, with its unit; "the proximal fragment: 2 screws, 4 cortices"
  Verdict verdict = Verdict::kept;
  std::string source;  // published, or "common practice, no source"
  std::string advice;  // what to change, a sentence; empty unless broken
};

// Broken ones first, then in a fixed order. @pre check(construct) reports no error.
std::vector<RuleFinding> review(const Construct& construct);

// Names of those that are broken, in the review's order.
std::vector<std::string> broken_rules(const std::vector<RuleFinding>& review);

// Of all rules, in their fixed order.
std::vector<std::string> rule_names();

}  // namespace gapstrain::models
