#include "models/assessment/least_margins.h"

#include "models/catalogue/figure_entry.h"

#include <algorithm>
#include <set>

namespace gapstrain::models {

namespace {

using Kinds = std::set<MarginKind>;

Kinds kinds_of(const AssessedConstruct& one) {
  Kinds kinds;
  for (const auto& margin : one.assessment.margins)
    if (!margin.indicative) kinds.insert(margin.kind);
  return kinds;
}

// Of what is known of all: a construct whose fatigue is not known must not look the stronger for it.
Kinds common_kinds(const std::vector<AssessedConstruct>& assessed) {
  Kinds common = kinds_of(assessed.front());
  for (const auto& one : assessed) {
    const Kinds kinds = kinds_of(one);
    std::erase_if(common, [&](MarginKind kind) { return !kinds.contains(kind); });
  }
  return common;
}

}  // namespace

LeastMargins compare_least_margins(const std::vector<AssessedConstruct>& assessed) {
  LeastMargins found;
  std::vector<LeastMargins::One> all;
  std::size_t most_kinds = 0;
  for (const auto& one : assessed) most_kinds = std::max(most_kinds, kinds_of(one).size());
  const Kinds kinds = common_kinds(assessed);
  for (std::size_t k = 0; k < assessed.size(); ++k) {
    if (const Margin* margin = least_margin(assessed[k].assessment.margins, kinds)) all.push_back({k, *margin});
    if (kinds_of(assessed[k]).size() < most_kinds) found.incomplete.push_back(k);
  }
  if (all.size() < 2) return found;
  std::stable_sort(all.begin(), all.end(), [](const LeastMargins::One& a, const LeastMargins::One& b) {
    return a.margin.factor > b.margin.factor;
  });
  const double ratio = all.front().margin.factor / all.back().margin.factor;
  // Loads differ in size for all constructs alike; what differs between constructs is the model's error of each.
  const double wide = (1.0 + model_error_of_stress) / (1.0 - model_error_of_stress);
  found.ends = {all.front(), all.back(), ratio, ratio > wide};
  return found;
}

}  // namespace gapstrain::models
