#include "models/rules/rules.h"

#include "models/rules/rules_subject.h"

#include <algorithm>

namespace gapstrain::models {

Treatment treatment_of(const Construct& construct) { return RuleSubject::of(construct).treatment; }

const std::vector<Rule>& all_rules() {
  static const std::vector<Rule> rules = [] {
    std::vector<Rule> all;
    for (auto* by_subject :
         {treatment_rules, plate_rules, count_rules, hole_rules, distance_rules, angle_rules, order_rules})
      for (const Rule& rule : by_subject()) all.push_back(rule);
    return all;
  }();
  return rules;
}

std::vector<std::string> rule_names() {
  std::vector<std::string> names;
  for (const Rule& rule : all_rules()) names.emplace_back(rule.name);
  return names;
}

std::vector<RuleFinding> review(const Construct& construct) {
  const RuleSubject subject = RuleSubject::of(construct);
  std::vector<RuleFinding> findings;
  for (const Rule& rule : all_rules()) {
    findings.push_back(rule.judge(subject));
    findings.back().rule = rule.name;
  }
  std::stable_partition(findings.begin(), findings.end(),
                        [](const RuleFinding& finding) { return finding.verdict == Verdict::broken; });
  return findings;
}

RuleParts parts_of(const RuleFinding& finding) {
  if (finding.inapplicable) return {};
  if (const auto* edge = std::get_if<EdgeBasis>(&finding.basis)) return {edge->screw};
  if (const auto* thread = std::get_if<ThreadBasis>(&finding.basis)) return {thread->screw};
  if (const auto* bend = std::get_if<BendBasis>(&finding.basis)) return {bend->screw};
  if (const auto* tilt = std::get_if<TiltBasis>(&finding.basis))
    return tilt->beyond.empty() ? RuleParts{tilt->screw} : tilt->beyond;
  if (const auto* treatment = std::get_if<TreatmentBasis>(&finding.basis)) return treatment->pressing;
  if (const auto* single = std::get_if<UnicorticalBasis>(&finding.basis))
    return single->others.empty() ? single->locking : single->others;
  const auto* order = std::get_if<OrderBasis>(&finding.basis);
  return order == nullptr || order->mishaps.empty() ? RuleParts{} : order->mishaps.front().early;
}

std::vector<std::string> broken_rules(const std::vector<RuleFinding>& review) {
  std::vector<std::string> names;
  for (const auto& finding : review)
    if (finding.verdict == Verdict::broken) names.push_back(finding.rule);
  return names;
}

}  // namespace gapstrain::models
