// How much bone is left round a screw: towards the fracture's edge, towards the bone's end, and beside it.
#include "models/rules/rules_subject.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
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

std::string in_words(const Nearest& near) {
  return fmt::format("{:.3g} mm at {} ({:.2g} thread diameters)", near.distance, near.seated->name,
                     near.distance / near.seated->screw->size.thread_diameter.value());
}

RuleFinding edge_rule(const RuleSubject& subject) {
  RuleFinding finding;
  finding.bound = "at least 1.5 thread diameters from axis to edge";
  finding.source = edge_source;
  const Nearest near = nearest(subject, &SeatedScrew::to_edge);
  if (!near.seated) return not_applicable(finding, "no plate screw");
  finding.figure = in_words(near);
  if (!at_least(near.distance, near.needed))
    break_rule(finding,
               fmt::format("Move or tilt {} at least {:.2g} mm away from the fracture, or leave hole {} empty.",
                           near.seated->name, near.needed - near.distance, near.seated->screw->hole));
  return finding;
}

RuleFinding end_rule(const RuleSubject& subject) {
  RuleFinding finding;
  finding.bound = "at least 1.5 thread diameters";
  finding.source = edge_source;
  const Nearest near = nearest(subject, &SeatedScrew::to_end);
  if (!near.seated) return not_applicable(finding, "no plate screw");
  finding.figure = in_words(near);
  if (!at_least(near.distance, near.needed))
    break_rule(
        finding,
        fmt::format("Tilt {} away from the joint, move the plate at least {:.2g} mm, or leave hole {} empty.",
                    near.seated->name, near.needed - near.distance, near.seated->screw->hole));
  return finding;
}

RuleFinding diameter_rule(const RuleSubject& subject) {
  RuleFinding finding;
  finding.bound = "at most 30 % of the width square to the screw, never above 33 %";
  finding.source =
      "30 %: common practice, no source; 33 %: Hoon et al. 2021, Vet. Comp. Orthop. Traumatol. (holes in feline "
      "femora, from the abstract)";
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
  if (!worst) return not_applicable(finding, "no screw stays in the bone");
  finding.figure = fmt::format("{:.3g} % at {} ({:.3g} mm in {:.3g} mm)", 100.0 * largest, worst->name,
                               worst->screw->size.thread_diameter.value(), width);
  if (!at_most(largest, usual_thread_share))
    break_rule(finding,
               fmt::format("Use screws of at most {:.1f} mm there{}.",
                           std::floor(10.0 * usual_thread_share * width) / 10.0,
                           at_most(largest, most_thread_share)
                               ? ""
                               : ": above 33 % the hole itself weakens the bone, filled or, later, empty"));
  return finding;
}

}  // namespace

std::vector<Rule> distance_rules() {
  return {{"nearest screw to the fracture", edge_rule},
          {"nearest screw to the bone's end", end_rule},
          {"screw thread against the bone's width", diameter_rule}};
}

}  // namespace gapstrain::models
