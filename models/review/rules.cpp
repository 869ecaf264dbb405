#include "models/review/rules.h"

#include "models/review/rules_subject.h"

#include <algorithm>

namespace gapstrain::models {

Treatment treatment_of(const Construct& construct) { return RuleSubject(construct).treatment; }

std::vector<RuleFinding> review(const Construct& construct) {
  const RuleSubject subject(construct);
  std::vector<RuleFinding> findings;
  for (auto* rules :
       {treatment_rules, plate_rules, count_rules, hole_rules, distance_rules, angle_rules, order_rules}) {
    const auto more = rules(subject);
    findings.insert(findings.end(), more.begin(), more.end());
  }
  std::stable_partition(findings.begin(), findings.end(),
                        [](const RuleFinding& finding) { return finding.verdict == Verdict::broken; });
  return findings;
}

}  // namespace gapstrain::models
