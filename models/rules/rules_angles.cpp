// What turns a locking head out of its thread: a tilted screw, and a bend at its hole.
#include "models/rules/rules_subject.h"

#include <fmt/format.h>

#include <cmath>

namespace gapstrain::models {

namespace {

// Title and findings from the abstract; year, volume and page from memory.
constexpr auto off_axis =
    "Gallagher, Silva & Ricci 2014, J. Orthop. Trauma 28:427 (abstract; year, volume and page from memory)";

RuleFinding tilt_rule(const RuleSubject& subject) {
  const Angle limit = subject.construct.plate.angle_limit;
  RuleFinding finding;
  finding.bound = fmt::format("at most {:.3g} deg from square to the plate", in_degrees(limit));
  finding.source = fmt::format(
      "the system's limit, 12 deg unless entered: common practice, no source; strength is lost from 5 deg on: {}",
      off_axis);
  const SeatedScrew* worst = nullptr;
  std::vector<std::string> beyond;
  for (const auto& seated : subject.screws) {
    if (!seated.stays || seated.screw->kind != ScrewKind::locking) continue;
    const Angle tilt = tilt_of(*seated.screw);
    if (!worst || tilt > tilt_of(*worst->screw)) worst = &seated;
    if (!at_most(in_degrees(tilt), in_degrees(limit))) beyond.push_back(seated.name);
  }
  if (!worst) return not_applicable(finding, "no screw locks in the plate");
  const double largest = in_degrees(tilt_of(*worst->screw));
  finding.figure = largest > 0.0 ? fmt::format("{:.3g} deg at {}", largest, worst->name) : "all are square";
  constexpr double loss_begins = 5.0;
  if (!at_most(largest, loss_begins))
    finding.figure += "; heads of a fixed angle have lost most of their strength from 5 deg on";
  if (!beyond.empty())
    break_rule(finding, fmt::format("Turn {} back to {:.3g} deg or less; what the maker allows may be less still.",
                                    listed(beyond), in_degrees(limit)));
  return finding;
}

RuleFinding contour_rule(const RuleSubject& subject) {
  RuleFinding finding;
  finding.bound = "at most 5 deg";
  finding.source = fmt::format("{}: no loss at 5 deg, significant loss at 10", off_axis);
  const SeatedScrew* worst = nullptr;
  double largest = 0.0;
  for (const auto& seated : subject.screws) {
    if (!seated.stays || seated.screw->kind != ScrewKind::locking) continue;
    const double turn =
        std::abs(in_degrees(turn_at_hole(subject.construct.plate, subject.plate, seated.screw->hole)));
    if (worst && turn <= largest) continue;
    worst = &seated;
    largest = turn;
  }
  if (!worst) return not_applicable(finding, "no screw locks in the plate");
  if (largest < 0.05) {
    finding.figure = "none";
    return finding;
  }
  finding.figure = fmt::format("{:.2g} deg at hole {} ({}), half-way to the holes beside it included", largest,
                               worst->screw->hole, worst->name);
  if (!at_most(largest, in_degrees(largest_bend_at_locking_hole)))
    break_rule(finding,
               fmt::format("Leave hole {} empty, put a ball-headed screw in it, or bend the plate less there.",
                           worst->screw->hole));
  return finding;
}

}  // namespace

Angle tilt_of(const Screw& screw) {
  return std::atan(std::hypot(std::tan(screw.tilt_along.value()), std::tan(screw.tilt_across.value()))) * radian;
}

double slope_angle(const PlateShape& shape, Length along) {
  const Eigen::Vector3d normal = shape.mid_surface(along.value(), 0.0).normal;
  return std::atan2(-normal.x(), normal.z());
}

Angle turn_at_hole(const Plate& plate, const PlateShape& shape, int hole) {
  const std::size_t index = static_cast<std::size_t>(hole) - 1;
  const Length here = plate.holes[index].position;
  const Length before = 0.5 * (here + (index > 0 ? plate.holes[index - 1].position : Length()));
  const Length after =
      0.5 * (here + (index + 1 < plate.holes.size() ? plate.holes[index + 1].position : plate.length));
  return (slope_angle(shape, before) - slope_angle(shape, after)) * radian;
}

std::vector<Rule> angle_rules() {
  return {{"tilt of the locking screws", tilt_rule}, {"bend at a locking hole", contour_rule}};
}

}  // namespace gapstrain::models
