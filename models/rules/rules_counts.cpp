// How many screws hold each fragment, through how many cortices.
#include "models/rules/rules_subject.h"

#include <algorithm>

namespace gapstrain::models {

namespace {

// Pressed fragments share the load, bridged ones leave it to the plate. More than is ample is never advised
// against: some bones are customarily held by more.
RuleFinding count_rule(const RuleSubject& subject, std::size_t fragment) {
  const bool bridged = subject.treatment == Treatment::bridging;
  const int least = bridged ? 3 : 2, ample = bridged ? 4 : 3;
  RuleFinding finding;
  finding.source = bridged ? "common practice, no source; more than 4 add little: Stoffel et al. 2003, Injury 34 "
                             "Suppl. 2 (from memory)"
                           : "common practice, no source";
  const auto screws = subject.fragment(fragment);
  CountBasis basis{fragment, bridged, static_cast<int>(screws.size()), 0};
  basis.bicortical = static_cast<int>(
      std::count_if(screws.begin(), screws.end(), [](const SeatedScrew* s) { return s->screw->cortices == 2; }));
  finding.unit = FigureUnit::count;
  finding.value = basis.bicortical;
  finding.least = least;
  finding.ample = ample;
  finding.basis = basis;
  if (basis.bicortical < least) finding.verdict = Verdict::broken;
  return finding;
}

RuleFinding unicortical_rule(const RuleSubject& subject) {
  RuleFinding finding;
  finding.source = "common practice, no source";
  UnicorticalBasis basis;
  for (const auto& seated : subject.screws)
    if (seated.stays && seated.screw->cortices == 1)
      (seated.screw->kind == ScrewKind::locking ? basis.locking : basis.others).push_back(seated.part);
  finding.basis = basis;
  if (basis.locking.empty() && basis.others.empty())
    return not_applicable(finding, Inapplicable::all_pass_both_cortices);
  if (!basis.others.empty()) finding.verdict = Verdict::broken;
  return finding;
}

}  // namespace

std::vector<Rule> count_rules() {
  return {{"screws in the proximal fragment", [](const RuleSubject& subject) { return count_rule(subject, 0); }},
          {"screws in the distal fragment", [](const RuleSubject& subject) { return count_rule(subject, 1); }},
          {"screws in one cortex", unicortical_rule}};
}

}  // namespace gapstrain::models
