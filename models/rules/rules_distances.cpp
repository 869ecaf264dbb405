// How much bone is left round a screw: towards the fracture's edge, towards the bone's end, and beside it.
#include "models/rules/rules_subject.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

namespace gapstrain::models {

namespace {

constexpr auto edge_source = "common practice (a screw diameter of bone beside the thread; 4 to 5 mm), no source";

struct Nearest {
  const SeatedScrew* seated = nullptr;
  double distance = std::numeric_limits<double>::infinity();
  double needed = 0.0;
};

// Of the plate screws that stay, the one that lacks most of what it needs, or has least to spare.
Nearest nearest(const RuleSubject& subject, double SeatedScrew::*distance) {
  Nearest found;
  for (const auto& seated : subject.screws) {
    if (!seated.stays || !seated.is_plate_screw()) continue;
    const double needed = least_edge_clearance * seated.screw->size.thread_diameter.value();
    if (const double here = seated.*distance; here - needed < found.distance - found.needed)
      found = {&seated, here, needed};
  }
  return found;
}

RuleFinding nearest_rule(const RuleSubject& subject, bool of_fracture) {
  RuleFinding finding;
  finding.unit = FigureUnit::thread_diameters;
  finding.least = least_edge_clearance;
  finding.source = edge_source;
  finding.basis = EdgeBasis{of_fracture};
  const Nearest near = nearest(subject, of_fracture ? &SeatedScrew::to_edge : &SeatedScrew::to_end);
  if (!near.seated) return not_applicable(finding, Inapplicable::no_plate_screw);
  finding.value = near.distance / near.seated->screw->size.thread_diameter.value();
  finding.basis = EdgeBasis{of_fracture, near.seated->part, near.distance * mm, near.needed * mm};
  if (!at_least(near.distance, near.needed)) finding.verdict = Verdict::broken;
  return finding;
}

RuleFinding diameter_rule(const RuleSubject& subject) {
  RuleFinding finding;
  finding.most = usual_thread_share;
  finding.source = fmt::format(
      "{:.0f} %: common practice, no source; {:.0f} %: Hoon et al. 2021, Vet. Comp. Orthop. Traumatol. (holes in "
      "feline femora, from the abstract)",
      100.0 * usual_thread_share, 100.0 * most_thread_share);
  finding.basis = ThreadBasis{most_thread_share};
  const SeatedScrew* worst = nullptr;
  double largest = 0.0, width = 0.0;
  for (const auto& seated : subject.screws) {
    if (!seated.stays || !seated.placement.bone) continue;
    const double share = seated.screw->size.thread_diameter.value() / seated.bone_width;
    if (share <= largest * (1.0 + 1e-9)) continue;
    worst = &seated;
    largest = share;
    width = seated.bone_width;
  }
  if (!worst) return not_applicable(finding, Inapplicable::no_screw_in_bone);
  finding.value = largest;
  finding.basis = ThreadBasis{most_thread_share, worst->part, worst->screw->size.thread_diameter, width * mm,
                              !at_most(largest, most_thread_share)};
  if (!at_most(largest, usual_thread_share)) finding.verdict = Verdict::broken;
  return finding;
}

}  // namespace

std::vector<Rule> distance_rules() {
  return {
      {"nearest screw to the fracture", [](const RuleSubject& subject) { return nearest_rule(subject, true); }},
      {"nearest screw to the bone's end", [](const RuleSubject& subject) { return nearest_rule(subject, false); }},
      {"screw thread against the bone's width", diameter_rule}};
}

}  // namespace gapstrain::models
