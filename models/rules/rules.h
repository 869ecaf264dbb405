// The rules of the trade, held against a construct. They look at geometry and steps only: no stress.
#pragma once

#include "models/parts/construct.h"
#include "models/parts/figure_unit.h"
#include "models/rules/rule_basis.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

// A comminuted fracture is bridged, and so is a simple one of which more than 1 mm of gap is left when compression
// screws have used up their slides (the longest of each fragment; in practice it is less).
Treatment treatment_of(const Construct& construct);

enum class Verdict { kept, broken, not_applicable };

// Values; bound, figure and advice in words are made of them by models/words/rule_words.h.
struct RuleFinding {
  std::string rule;  // "plate span ratio"
  Verdict verdict = Verdict::kept;
  std::string source{};                        // published, or "common practice, no source"
  FigureUnit unit = FigureUnit::ratio;         // of the next four
  std::optional<double> value{};               // this construct's; nothing where the rule is not on a number
  std::optional<double> least{}, most{};       // the bound
  std::optional<double> ample{};               // up to here more is worth having; to pass it breaks nothing
  std::optional<Inapplicable> inapplicable{};  // set with that verdict
  RuleBasis basis{};
};

// Screws and clamps that the finding is about: what breaks the rule, or the worst that keeps it.
RuleParts parts_of(const RuleFinding& finding);

// Broken ones first, then in a fixed order. @pre check(construct) reports no error.
std::vector<RuleFinding> review(const Construct& construct);

// Names of those that are broken, in the review's order.
std::vector<std::string> broken_rules(const std::vector<RuleFinding>& review);

// Of all rules, in their fixed order.
std::vector<std::string> rule_names();

}  // namespace gapstrain::models
