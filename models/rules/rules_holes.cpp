// Which holes are empty: over the fracture, and at the fragments' ends.
#include "models/rules/rules_subject.h"

#include <algorithm>

namespace gapstrain::models {

namespace {

int empty_over_fracture(const RuleSubject& subject) {
  const int first = subject.innermost(false).screw->hole, last = subject.innermost(true).screw->hole;
  const auto filled = std::count_if(subject.screws.begin(), subject.screws.end(), [&](const SeatedScrew& s) {
    return s.stays && s.screw->hole > first && s.screw->hole < last;
  });
  return last - first - 1 - static_cast<int>(filled);
}

std::optional<int> first_of(const std::vector<int>& holes) {
  return holes.empty() ? std::nullopt : std::optional(holes.front());
}

EmptyHolesBasis empty_holes(const RuleSubject& subject) {
  EmptyHolesBasis basis{subject.is_simple()};
  basis.innermost_proximal = subject.innermost(false).screw->hole;
  basis.innermost_distal = subject.innermost(true).screw->hole;
  const auto position = [&](int hole) {
    return only(subject.construct.plates).holes[static_cast<std::size_t>(hole) - 1].position;
  };
  basis.working_length = position(basis.innermost_distal) - position(basis.innermost_proximal);
  const BoneSection section = subject.bone.section(only(subject.construct.fractures).position.value());
  basis.bone_diameters = basis.working_length.value() / (section.semi_y + section.semi_z);
  return basis;
}

// Over a simple fracture some holes are left empty, a comminuted zone has screws as near to it as they go.
RuleFinding empty_rule(const RuleSubject& subject) {
  constexpr int least = 2, most = 3;
  RuleFinding finding;
  finding.unit = FigureUnit::count;
  finding.basis = EmptyHolesBasis{subject.is_simple()};
  if (subject.is_simple()) {
    finding.least = least;
    finding.most = most;
  }
  finding.source = "Gautier & Sommer 2003, Injury 34 Suppl. 2 (from memory)";
  if (!subject.has_screws_on_both_sides()) return not_applicable(finding, Inapplicable::fragment_without_screw);
  EmptyHolesBasis basis = empty_holes(subject);
  const int empty = empty_over_fracture(subject);
  finding.value = empty;
  finding.basis = basis;
  if (subject.treatment != Treatment::bridging) return not_applicable(finding, Inapplicable::pressed);
  bool is_broken = empty < least || empty > most;
  if (!subject.is_simple()) {
    basis.nearest_usable_proximal = first_of(subject.usable_holes_inside(false));
    basis.nearest_usable_distal = first_of(subject.usable_holes_inside(true));
    finding.basis = basis;
    is_broken = basis.nearest_usable_proximal || basis.nearest_usable_distal;
  }
  if (is_broken) finding.verdict = Verdict::broken;
  return finding;
}

constexpr int may_be_left_out = 1;  // holes at either end of a fragment

// One of the two holes at the plate's end, and when the fracture is pressed one of the two nearest to it that can
// be filled: when it is bridged the rule above says how near. `left_out`: the most at either end.
FragmentSpread spread_of(const RuleSubject& subject, bool distal, int& left_out) {
  const int holes = static_cast<int>(only(subject.construct.plates).holes.size());
  const int last = subject.outermost(distal).screw->hole, first = subject.innermost(distal).screw->hole;
  FragmentSpread spread{std::min(first, last), std::max(first, last)};
  const int beyond = distal ? holes - last : last - 1;
  if (beyond > may_be_left_out) spread.move_out_to = distal ? holes : 1;
  left_out = std::max(left_out, beyond);
  if (subject.treatment == Treatment::bridging) return spread;
  const auto usable = subject.usable_holes_inside(distal);
  const int inside = static_cast<int>(usable.size());
  if (inside > may_be_left_out) spread.move_in_to = {usable[0], usable[1]};
  left_out = std::max(left_out, inside);
  return spread;
}

RuleFinding spread_rule(const RuleSubject& subject) {
  RuleFinding finding;
  finding.unit = FigureUnit::count;
  finding.most = may_be_left_out;
  finding.source = "common practice, no source";
  finding.basis = SpreadBasis{};
  if (!subject.has_screws_on_both_sides()) return not_applicable(finding, Inapplicable::fragment_without_screw);
  int left_out = 0;
  SpreadBasis basis{spread_of(subject, false, left_out), {}};
  basis.distal = spread_of(subject, true, left_out);
  finding.value = left_out;
  finding.basis = basis;
  if (left_out > may_be_left_out) finding.verdict = Verdict::broken;
  return finding;
}

}  // namespace

std::vector<Rule> hole_rules() {
  return {{"holes over the fracture when bridging", empty_rule}, {"spread of the screws", spread_rule}};
}

}  // namespace gapstrain::models
