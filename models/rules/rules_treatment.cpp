// Whether the fracture is pressed, held or bridged, and what that asks of its gap and of the plate's prebend.
#include "models/rules/rules_subject.h"

namespace gapstrain::models {

namespace {

RuleParts sliding(const RuleSubject& subject) {
  RuleParts parts;
  for (const auto& seated : subject.screws)
    if (seated.screw->kind == ScrewKind::compression) parts.push_back(seated.part);
  return parts;
}

// What presses needs a gap that it can close; a closed simple fracture needs something that presses; a comminuted
// zone is not to be pressed at all.
RuleFinding treatment_rule(const RuleSubject& subject) {
  TreatmentBasis basis{subject.treatment, subject.is_simple(), only(subject.construct.fractures).gap,
                       subject.slid * mm, sliding(subject),    subject.pressing()};
  RuleFinding finding;
  finding.source = "common practice, no source";
  finding.unit = FigureUnit::length;
  finding.value = subject.gap_left();
  bool is_broken = false;
  if (!basis.simple) {
    is_broken = !basis.pressing.empty();
  } else if (basis.pressing.empty()) {
    finding.least = largest_pressed_gap.value();
    is_broken = at_most(subject.gap_left(), largest_pressed_gap.value());
  } else {
    finding.most = largest_pressed_gap.value();
    is_broken = subject.treatment == Treatment::bridging;
    if (is_broken) basis.reach = largest_pressed_gap + basis.slid;
  }
  finding.basis = std::move(basis);
  if (is_broken) finding.verdict = Verdict::broken;
  return finding;
}

RuleFinding bridged_gap_rule(const RuleSubject& subject) {
  constexpr double largest = 2.0;  // mm
  RuleFinding finding;
  finding.unit = FigureUnit::length;
  finding.most = largest;
  finding.source = "Claes et al. 1997, J. Orthop. Res. 15:577 (healing poorer above 2 mm)";
  finding.basis = BridgedGapBasis{};
  if (!subject.is_simple()) return not_applicable(finding, Inapplicable::comminuted);
  if (subject.treatment != Treatment::bridging) return not_applicable(finding, Inapplicable::pressed);
  finding.value = subject.gap_left();
  if (!at_most(subject.gap_left(), largest)) finding.verdict = Verdict::broken;
  return finding;
}

// Transverse by the usual division of fractures: below 30 degrees (from memory).
RuleFinding prebend_rule(const RuleSubject& subject) {
  const Angle transverse = 30.0 * degree;
  RuleFinding finding;
  finding.unit = FigureUnit::length;
  finding.least = least_prebend.value();
  finding.most = largest_prebend.value();
  finding.source = "surgical textbooks, from memory";
  finding.basis = PrebendBasis{};
  if (subject.treatment != Treatment::compression || !(subject.slid > 0.0))
    return not_applicable(finding, Inapplicable::plate_does_not_press);
  if (!(only(subject.construct.fractures).obliquity < transverse))
    return not_applicable(finding, Inapplicable::oblique);
  const double prebend = only(subject.construct.plates).prebend.value();
  finding.value = prebend;
  if (!at_least(prebend, *finding.least) || !at_most(prebend, *finding.most)) finding.verdict = Verdict::broken;
  return finding;
}

}  // namespace

std::vector<Rule> treatment_rules() {
  return {{"treatment", treatment_rule},
          {"gap of a bridged simple fracture", bridged_gap_rule},
          {"prebend", prebend_rule}};
}

}  // namespace gapstrain::models
