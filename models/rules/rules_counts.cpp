// How many screws hold each fragment, through how many cortices.
#include "models/rules/rules_subject.h"

#include <fmt/format.h>

#include <algorithm>

namespace gapstrain::models {

namespace {

std::string plural(int count, std::string_view one) {
  return fmt::format("{} {}{}", count, one, count == 1 ? "" : "s");
}

// Pressed fragments share the load, bridged ones leave it to the plate.
RuleFinding count_rule(const RuleSubject& subject, bool distal) {
  const bool bridged = subject.treatment == Treatment::bridging;
  const int least = bridged ? 3 : 2, most = bridged ? 4 : 3;
  RuleFinding finding;
  finding.bound =
      fmt::format("{} to {} through both cortices when {}", least, most, bridged ? "bridging" : "pressed");
  finding.source = bridged ? "common practice, no source; more than 4 add little: Stoffel et al. 2003, Injury 34 "
                             "Suppl. 2 (from memory)"
                           : "common practice, no source";
  const auto screws = subject.fragment(distal);
  const int count = static_cast<int>(screws.size());
  const int bicortical = static_cast<int>(
      std::count_if(screws.begin(), screws.end(), [](const SeatedScrew* s) { return s->screw->cortices == 2; }));
  finding.figure =
      fmt::format("{}, {}", plural(count, "screw"),
                  count + bicortical == 1 ? "1 cortex" : fmt::format("{} cortices", count + bicortical));
  if (bicortical < least) {
    const int missing = least - bicortical, single = count - bicortical;
    const int longer = std::min(missing, single);
    std::string advice;
    if (longer > 0)
      advice = fmt::format("Let {} reach the far cortex",
                           longer == 1 ? "one more screw" : plural(longer, "more screw"));
    if (missing > longer)
      advice += fmt::format("{} {} in {}", advice.empty() ? "Add" : " and add", plural(missing - longer, "screw"),
                            fragment_name(distal));
    break_rule(finding, advice + ".");
  } else if (count > most) {  // never advised against: some bones are customarily held by more
    finding.figure += fmt::format("; more than {} add little", most);
  }
  return finding;
}

RuleFinding unicortical_rule(const RuleSubject& subject) {
  RuleFinding finding;
  finding.bound = "only locking ones, in good bone";
  finding.source = "common practice, no source";
  std::vector<std::string> locking, others;
  for (const auto& seated : subject.screws)
    if (seated.stays && seated.screw->cortices == 1)
      (seated.screw->kind == ScrewKind::locking ? locking : others).push_back(seated.name);
  if (locking.empty() && others.empty()) return not_applicable(finding, "all screws pass both cortices");
  if (others.empty()) {
    finding.figure = fmt::format("{}: look at the bone before trusting {}", listed(locking),
                                 locking.size() == 1 ? "it" : "them");
    return finding;
  }
  finding.figure = fmt::format("{} {} not lock", listed(others), others.size() == 1 ? "does" : "do");
  break_rule(finding, fmt::format("Let {} reach the far cortex: a ball head holds by its thread's pull alone.",
                                  listed(others)));
  return finding;
}

}  // namespace

std::vector<Rule> count_rules() {
  return {
      {"screws in the proximal fragment", [](const RuleSubject& subject) { return count_rule(subject, false); }},
      {"screws in the distal fragment", [](const RuleSubject& subject) { return count_rule(subject, true); }},
      {"screws in one cortex", unicortical_rule}};
}

}  // namespace gapstrain::models
