// Whether the fracture is pressed, held or bridged, and what that asks of its gap and of the plate's prebend.
#include "models/rules/rules_subject.h"

#include <fmt/format.h>

namespace gapstrain::models {

namespace {

std::string names_of(const RuleSubject& subject, ScrewKind kind) {
  std::vector<std::string> names;
  for (const auto& seated : subject.screws)
    if (seated.screw->kind == kind) names.push_back(seated.name);
  return listed(names);
}

// "0.7 mm of gap, of which S5 closes 0.7 mm: 0 mm left"
std::string gap_left_in_words(const RuleSubject& subject) {
  const double gap = subject.construct.fracture.gap.value();
  if (!(subject.slid > 0.0)) return fmt::format("{:.3g} mm of gap", gap);
  return fmt::format("{:.3g} mm of gap, of which the slide of {} can close {:.3g} mm: {:.3g} mm left", gap,
                     names_of(subject, ScrewKind::compression), subject.slid, subject.gap_left());
}

std::string treatment_name(Treatment treatment) {
  switch (treatment) {
    case Treatment::compression:
      return "compression";
    case Treatment::neutralisation:
      return "lag screw and neutralisation plate";
    case Treatment::bridging:
      break;
  }
  return "bridging";
}

// What presses needs a gap that it can close; a closed simple fracture needs something that presses.
RuleFinding treatment_rule(const RuleSubject& subject) {
  const auto pressing = subject.pressing();
  RuleFinding finding;
  finding.source = "common practice, no source";
  finding.figure = fmt::format("{}: {}", treatment_name(subject.treatment), gap_left_in_words(subject));
  if (!subject.is_simple()) {
    finding.bound = "a comminuted zone is bridged, not pressed";
    finding.figure =
        fmt::format("a comminuted zone of {:.3g} mm, {}", subject.construct.fracture.gap.value(),
                    pressing.empty() ? "bridged" : fmt::format("on which {} pulls", listed(pressing)));
    if (!pressing.empty())
      break_rule(
          finding,
          fmt::format("Leave {} out, or make it a screw that only holds: pressing shortens a comminuted bone.",
                      listed(pressing)));
    return finding;
  }
  if (pressing.empty()) {
    finding.bound = "a simple fracture closed to 1 mm is pressed together";
    if (at_most(subject.gap_left(), largest_pressed_gap.value())) {
      finding.figure += ", and nothing presses";
      break_rule(finding,
                 "Press the fracture: a compression screw, a fracture clamp closed before the plate locks, or a "
                 "lag screw. In a gap this narrow the same motion strains the tissue most.");
    }
    return finding;
  }
  finding.bound = "what presses comes to a gap of at most 1 mm";
  if (subject.treatment == Treatment::bridging)
    break_rule(finding,
               fmt::format("Reduce the fragments to a gap of at most {:.3g} mm before {} {}, or "
                           "bridge the fracture without {}.",
                           largest_pressed_gap.value() + subject.slid, listed(pressing),
                           pressing.size() == 1 ? "presses" : "press", pressing.size() == 1 ? "it" : "them"));
  return finding;
}

RuleFinding bridged_gap_rule(const RuleSubject& subject) {
  constexpr double largest = 2.0;  // mm
  RuleFinding finding;
  finding.bound = "at most 2 mm";
  finding.source = "Claes et al. 1997, J. Orthop. Res. 15:577 (healing poorer above 2 mm)";
  if (!subject.is_simple()) return not_applicable(finding, "the fracture is comminuted");
  if (subject.treatment != Treatment::bridging) return not_applicable(finding, "the fracture is pressed");
  const double gap = subject.gap_left();
  finding.figure = fmt::format("{:.3g} mm", gap);
  if (!at_most(gap, largest))
    break_rule(finding, fmt::format("Bring the fragments {:.3g} mm closer, to a gap of 2 mm or less; if the "
                                    "{:.3g} mm are a zone of pieces, enter the fracture as comminuted.",
                                    gap - largest, gap));
  return finding;
}

// Transverse by the usual division of fractures: below 30 degrees (from memory).
RuleFinding prebend_rule(const RuleSubject& subject) {
  const Angle transverse = 30.0 * degree;
  RuleFinding finding;
  finding.bound = "1 to 2 mm over a transverse fracture that the plate presses";
  finding.source = "surgical textbooks, from memory";
  if (subject.treatment != Treatment::compression || !(subject.slid > 0.0))
    return not_applicable(finding, "the plate does not press the fracture");
  if (!(subject.construct.fracture.obliquity < transverse))
    return not_applicable(finding, "the fracture is oblique");
  const double prebend = subject.construct.plate.prebend.value();
  finding.figure = fmt::format("{:.3g} mm", prebend);
  if (!at_least(prebend, least_prebend.value()))
    break_rule(finding,
               "Bend the plate over the fracture until it stands 1 to 2 mm off the bone there; without, it "
               "presses the near cortex and the far one gapes. A thick plate may need less: the analysis' "
               "sufficient prebend, and its stress after the steps, tell.");
  else if (!at_most(prebend, largest_prebend.value()))
    break_rule(finding,
               "Take the prebend back to 1 to 2 mm: more of it presses the far cortex alone and bends the plate "
               "for good.");
  return finding;
}

}  // namespace

std::vector<Rule> treatment_rules() {
  return {{"treatment", treatment_rule},
          {"gap of a bridged simple fracture", bridged_gap_rule},
          {"prebend", prebend_rule}};
}

}  // namespace gapstrain::models
