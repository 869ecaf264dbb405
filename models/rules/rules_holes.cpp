// Which holes are empty: over the fracture, and at the fragments' ends.
#include "models/rules/rules_subject.h"

#include <fmt/format.h>

#include <algorithm>

namespace gapstrain::models {

namespace {

std::vector<std::string> hole_numbers(const std::vector<int>& holes) {
  std::vector<std::string> words;
  for (const int hole : holes) words.push_back(fmt::format("{}", hole));
  return words;
}

int empty_over_fracture(const RuleSubject& subject) {
  const int first = subject.innermost(false).screw->hole, last = subject.innermost(true).screw->hole;
  const auto filled = std::count_if(subject.screws.begin(), subject.screws.end(), [&](const SeatedScrew& s) {
    return s.stays && s.screw->hole > first && s.screw->hole < last;
  });
  return last - first - 1 - static_cast<int>(filled);
}

// "2; working length 34.5 mm, 2.6 bone diameters"
std::string empty_in_words(const RuleSubject& subject) {
  const auto& holes = subject.construct.plate.holes;
  const auto position = [&](bool distal) {
    return holes[static_cast<std::size_t>(subject.innermost(distal).screw->hole) - 1].position.value();
  };
  const double length = position(true) - position(false);
  const BoneSection section = subject.bone.section(subject.construct.fracture.position.value());
  return fmt::format("{} empty; working length {:.3g} mm, {:.2g} bone diameters", empty_over_fracture(subject),
                     length, length / (section.semi_y + section.semi_z));
}

void judge_simple(const RuleSubject& subject, RuleFinding& finding) {
  constexpr int least = 2, most = 3;
  const int empty = empty_over_fracture(subject);
  const int inner = subject.innermost(false).screw->hole, outer = subject.innermost(true).screw->hole;
  if (empty < least)
    break_rule(
        finding,
        fmt::format(
            "Move the innermost screws outward, out of hole {} or {}, until {} holes over the fracture are empty.",
            inner, outer, least));
  if (empty > most)
    break_rule(finding, fmt::format("Move the innermost screws, in holes {} and {}, nearer to the fracture until "
                                    "no more than {} holes over it are empty.",
                                    inner, outer, most));
}

void judge_comminuted(const RuleSubject& subject, RuleFinding& finding) {
  for (const bool distal : {false, true})
    if (const auto usable = subject.usable_holes_inside(distal); !usable.empty())
      break_rule(finding, fmt::format("In {} put a screw in hole {}, the nearest that is clear of the fracture.",
                                      fragment_name(distal), usable.front()));
}

RuleFinding empty_rule(const RuleSubject& subject) {
  RuleFinding finding;
  finding.bound = subject.is_simple() ? "2 to 3 empty over a simple fracture"
                                      : "screws as close as possible to a comminuted zone";
  finding.source = "Gautier & Sommer 2003, Injury 34 Suppl. 2 (from memory)";
  if (!subject.has_screws_on_both_sides()) return not_applicable(finding, "a fragment has no plate screw");
  finding.figure = empty_in_words(subject);
  if (subject.treatment != Treatment::bridging)
    return not_applicable(finding, "the fracture is pressed; " + finding.figure);
  if (subject.is_simple())
    judge_simple(subject, finding);
  else
    judge_comminuted(subject, finding);
  return finding;
}

// One of the two holes at the plate's end, and when the fracture is pressed one of the two nearest to it that can
// be filled: when it is bridged the rule above says how near.
void judge_spread(const RuleSubject& subject, bool distal, RuleFinding& finding) {
  constexpr int left_out = 1;
  const int holes = static_cast<int>(subject.construct.plate.holes.size());
  const int last = subject.outermost(distal).screw->hole;
  const int beyond = distal ? holes - last : last - 1;
  if (beyond > left_out)
    break_rule(finding,
               fmt::format("Move a screw of {} out to hole {}.", fragment_name(distal), distal ? holes : 1));
  if (subject.treatment == Treatment::bridging) return;
  const auto usable = subject.usable_holes_inside(distal);
  if (static_cast<int>(usable.size()) > left_out)
    break_rule(finding, fmt::format("Move a screw of {} in to hole {}.", fragment_name(distal),
                                    listed(hole_numbers({usable[0], usable[1]}), "or")));
}

RuleFinding spread_rule(const RuleSubject& subject) {
  RuleFinding finding;
  finding.bound = "near and far in each fragment, at most one hole left out at either end";
  finding.source = "common practice, no source";
  if (!subject.has_screws_on_both_sides()) return not_applicable(finding, "a fragment has no plate screw");
  const auto reach = [&](bool distal) {
    const int a = subject.outermost(distal).screw->hole, b = subject.innermost(distal).screw->hole;
    return fmt::format("{} to {}", std::min(a, b), std::max(a, b));
  };
  finding.figure = fmt::format("holes {} in the proximal, {} in the distal fragment", reach(false), reach(true));
  judge_spread(subject, false, finding);
  judge_spread(subject, true, finding);
  return finding;
}

}  // namespace

std::vector<Rule> hole_rules() {
  return {{"holes over the fracture when bridging", empty_rule}, {"spread of the screws", spread_rule}};
}

}  // namespace gapstrain::models
