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
  const Angle limit = only(subject.construct.plates).angle_limit;
  RuleFinding finding;
  finding.unit = FigureUnit::angle;
  finding.most = in_degrees(limit);
  finding.source = fmt::format(
      "the system's limit, {:g} deg unless entered: common practice, no source; strength is lost from {:g} deg "
      "on: "
      "{}",
      in_degrees(Plate().angle_limit), in_degrees(strength_loss_begins), off_axis);
  const SeatedScrew* worst = nullptr;
  TiltBasis basis;
  for (const auto& seated : subject.screws) {
    if (!seated.stays || seated.screw->kind != ScrewKind::locking) continue;
    const Angle tilt = tilt_of(*seated.screw);
    if (!worst || tilt > tilt_of(*worst->screw)) worst = &seated;
    if (!at_most(in_degrees(tilt), in_degrees(limit))) basis.beyond.push_back(seated.part);
  }
  finding.basis = basis;
  if (!worst) return not_applicable(finding, Inapplicable::no_locking_screw);
  finding.value = in_degrees(tilt_of(*worst->screw));
  basis.screw = worst->part;
  basis.weakens = !at_most(*finding.value, in_degrees(strength_loss_begins));
  if (!basis.beyond.empty()) finding.verdict = Verdict::broken;
  finding.basis = std::move(basis);
  return finding;
}

RuleFinding contour_rule(const RuleSubject& subject) {
  RuleFinding finding;
  finding.unit = FigureUnit::angle;
  finding.most = in_degrees(largest_bend_at_locking_hole);
  finding.source = fmt::format("{}: no loss at 5 deg, significant loss at 10", off_axis);
  finding.basis = BendBasis{};
  const SeatedScrew* worst = nullptr;
  double largest = 0.0;
  for (const auto& seated : subject.screws) {
    if (!seated.stays || seated.screw->kind != ScrewKind::locking) continue;
    const double turn =
        std::abs(in_degrees(turn_at_hole(only(subject.construct.plates), subject.plate, seated.screw->hole)));
    if (worst && turn <= largest) continue;
    worst = &seated;
    largest = turn;
  }
  if (!worst) return not_applicable(finding, Inapplicable::no_locking_screw);
  constexpr double least_bend = 0.05;  // less is no bend
  finding.value = largest;
  finding.basis = BendBasis{worst->part, largest >= least_bend};
  if (!at_most(largest, *finding.most)) finding.verdict = Verdict::broken;
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
