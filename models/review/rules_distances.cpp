// How much bone is left round a screw: towards the fracture's edge, towards the bone's end, and beside it.
#include "models/review/rules_subject.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace gapstrain::models {

namespace {

constexpr auto edge_source = "common practice (a screw diameter of bone beside the thread; 4 to 5 mm), no source";

// Middles of the walls that a screw's thread holds in.
std::vector<Eigen::Vector3d> walls(const SeatedScrew& seated) {
  if (!seated.placement.bone) return {};
  std::vector<Eigen::Vector3d> places{seated.placement.bone->near.middle};
  if (seated.screw->cortices == 2) places.push_back(seated.placement.bone->far.middle);
  return places;
}

struct Nearest {
  const SeatedScrew* seated = nullptr;
  double distance = std::numeric_limits<double>::infinity();
  double needed = 0.0;
};

// Of the plate screws that stay, the one that lacks most of what it needs, or has least to spare.
template <class Distance>
Nearest nearest(const RuleSubject& subject, Distance distance) {
  Nearest found;
  for (const auto& seated : subject.screws) {
    if (!seated.stays || !seated.is_plate_screw()) continue;
    const double needed = least_edge_clearance * seated.screw->size.thread_diameter.value();
    for (const auto& wall : walls(seated))
      if (const double here = distance(wall); here - needed < found.distance - found.needed)
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
  finding.rule = "nearest screw to the fracture";
  finding.bound = "at least 1.5 thread diameters from axis to edge";
  finding.source = edge_source;
  const Nearest near = nearest(subject, [&](const auto& wall) { return subject.cut.edge_distance(wall); });
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
  finding.rule = "nearest screw to the bone's end";
  finding.bound = "at least 1.5 thread diameters";
  finding.source = edge_source;
  const Nearest near = nearest(subject, [&](const Eigen::Vector3d& wall) {
    const double x = subject.bone.unrolled(wall).y();
    return std::min(x, subject.bone.length() - x);
  });
  if (!near.seated) return not_applicable(finding, "no plate screw");
  finding.figure = in_words(near);
  if (!at_least(near.distance, near.needed))
    break_rule(
        finding,
        fmt::format("Tilt {} away from the joint, move the plate at least {:.2g} mm, or leave hole {} empty.",
                    near.seated->name, near.needed - near.distance, near.seated->screw->hole));
  return finding;
}

// Of the bone, square to the screw and to the bone's axis, where its near wall is: the width that its hole
// weakens.
double width_across(const BoneShape& bone, const SeatedScrew& seated) {
  const BoneSection section = bone.section_through(seated.placement.bone->near.middle);
  const Eigen::Vector3d& direction = seated.placement.direction;
  const Eigen::Vector2d along =
      Eigen::Vector2d(direction.dot(section.y_axis), direction.dot(section.z_axis)).normalized();
  return 2.0 * std::hypot(section.semi_y * along.y(), section.semi_z * along.x());
}

RuleFinding diameter_rule(const RuleSubject& subject) {
  RuleFinding finding;
  finding.rule = "screw thread against the bone's width";
  finding.bound = "at most 30 % of the width square to the screw, never above 33 %";
  finding.source =
      "30 %: common practice, no source; 33 %: Hoon et al. 2021, Vet. Comp. Orthop. Traumatol. (holes in feline "
      "femora, from the abstract)";
  const SeatedScrew* worst = nullptr;
  double largest = 0.0, width = 0.0;
  for (const auto& seated : subject.screws) {
    if (!seated.stays || !seated.placement.bone) continue;
    const double across = width_across(subject.bone, seated);
    const double share = seated.screw->size.thread_diameter.value() / across;
    if (share <= largest * (1.0 + 1e-9)) continue;
    worst = &seated;
    largest = share;
    width = across;
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

std::vector<RuleFinding> distance_rules(const RuleSubject& subject) {
  return {edge_rule(subject), end_rule(subject), diameter_rule(subject)};
}

}  // namespace gapstrain::models
