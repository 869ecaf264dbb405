#include "models/checks/checks.h"
#include "models/geometry/bone_mesh_sizes.h"
#include "models/geometry/fracture_cut.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <string>
#include <vector>

namespace gapstrain::models {

namespace {

// A little more than what the mesher asks for: a tenth of an edge between lines round the bone, a quarter of an
// edge between a line and a shaft's ring.
constexpr double line_share = 0.11, ring_share = 0.26;

struct Roller {
  std::string path, name, load;
  double x = 0.0;
};

bool is_on_bone(double x, const BoneShape& shape) { return x >= 0.0 && x <= shape.length(); }

bool is_over_gap(double x, const Fracture& fracture) {
  return x > (fracture.position - 0.5 * fracture.gap).value() &&
         x < (fracture.position + 0.5 * fracture.gap).value();
}

// Those that nothing has been said of yet.
std::vector<Roller> sound_rollers(const Construct& construct, const BoneShape& shape) {
  std::vector<Roller> rollers;
  for (std::size_t i = 0; i < construct.loads.size(); ++i) {
    const LoadCase& load = construct.loads[i];
    if (!load.four_point) continue;
    const auto& test = *load.four_point;
    const std::array<std::tuple<const char*, const char*, Length>, 4> all{
        {{"outer_proximal", "outer proximal", test.outer_proximal},
         {"inner_proximal", "inner proximal", test.inner_proximal},
         {"inner_distal", "inner distal", test.inner_distal},
         {"outer_distal", "outer distal", test.outer_distal}}};
    double last = -1.0;
    for (const auto& [key, name, place] : all) {
      const double x = place.value();
      if (!is_on_bone(x, shape) || x <= last) break;
      last = x;
      if (!is_over_gap(x, only(construct.fractures)))
        rollers.push_back({fmt::format("{}.four_point.{}", path_of_load(i), key), name, load.name, x});
    }
  }
  return rollers;
}

// Of the section's rim from the fracture's edges; negative where it reaches into the gap or lies on both sides.
double distance_from_cut(double x, const Fracture& fracture, const BoneShape& shape) {
  constexpr int samples = 72;
  const CutThroughBone cut(fracture, shape);
  const BoneSection section = shape.section(x);
  double least = std::numeric_limits<double>::max();
  int distal = 0;
  for (int k = 0; k < samples; ++k) {
    const Eigen::Vector3d place = section.point(section.outer().at_angle(2.0 * std::numbers::pi * k / samples));
    least = std::min(least, cut.edge_distance(place));
    distal += cut.is_distal(place) ? 1 : 0;
  }
  return distal == 0 || distal == samples ? least : -1.0;
}

// What keeps a roller from standing where it does, with the cure; empty when nothing does.
std::string fault_by_itself(const Roller& roller, const Construct& construct, const BoneShape& shape,
                            double least_distance) {
  if (std::min(roller.x, shape.length() - roller.x) < least_distance)
    return fmt::format("stands on the bone's very end; move it at least {} onto the bone",
                       text(least_distance * mm));
  if (distance_from_cut(roller.x, only(construct.fractures), shape) < least_distance)
    return "stands on the fracture's edge, where its saddle has no whole ring of bone; move it onto one fragment";
  return "";
}

std::string fault_with_screws(const Roller& roller, const std::vector<PlacedScrew>& screws,
                              const Construct& construct, const BoneShape& shape) {
  const double ring = 1.0 + ring_share * 2.0 * std::numbers::pi / ring_elements(construct.mesh);
  for (const auto& screw : screws) {
    const bool glides = screw.screw.kind == ScrewKind::lag && !screw.screw.entry;
    const double core = 0.5 * screw.screw.size.core_diameter.value();
    const double near_radius = screw.screw.entry ? 0.5 * screw.screw.size.thread_diameter.value() : core;
    for (const bool far : {false, true}) {
      if (far ? screw.screw.cortices < 2 : glides) continue;
      const WallCrossing& wall = far ? screw.placement.bone->far : screw.placement.bone->near;
      const double x = shape.unrolled(wall.middle).y(), reach = ring * (far ? core : near_radius);
      if (std::abs(x - roller.x) < reach)
        return fmt::format("stands on the {}, which passes the bone at {}; move it beyond {} or {}", screw.name,
                           text(x * mm), text((x - reach) * mm), text((x + reach) * mm));
    }
  }
  return "";
}

// Rollers at one place share its ring.
std::string fault_with_others(const std::vector<Roller>& rollers, std::size_t k, double least_distance) {
  constexpr double same = 1e-9;
  for (std::size_t other = 0; other < k; ++other) {
    const double apart = std::abs(rollers[k].x - rollers[other].x);
    if (apart >= same && apart < least_distance)
      return fmt::format(
          "stands {} beside the {} roller of the load \"{}\" at {}, and the mesh has no room between "
          "them; put both at the same place, or at least {} apart",
          text(apart * mm), rollers[other].name, rollers[other].load, text(rollers[other].x * mm),
          text(least_distance * mm));
  }
  return "";
}

void check_rollers(const Construct& construct, const std::vector<PlacedScrew>& screws, const BoneShape& shape,
                   ProblemList& problems) {
  const double least_distance = line_share * cut_edge(shape, construct.mesh);
  const auto rollers = sound_rollers(construct, shape);
  for (std::size_t k = 0; k < rollers.size(); ++k) {
    const Roller& roller = rollers[k];
    std::string fault = fault_by_itself(roller, construct, shape, least_distance);
    if (fault.empty()) fault = fault_with_others(rollers, k, least_distance);
    if (fault.empty()) fault = fault_with_screws(roller, screws, construct, shape);
    if (!fault.empty())
      problems.error(roller.path, fmt::format("The {} roller of the load \"{}\" at {} {}.", roller.name,
                                              roller.load, text(roller.x * mm), fault));
  }
}

void check_force_place(const LoadCase& load, const SurfaceForce& force, const std::string& where,
                       const Construct& construct, const BoneShape& shape, ProblemList& problems) {
  const double x = force.position.value(), around = force.around.value();
  if (!std::isfinite(x) || !std::isfinite(around)) return;  // said already
  const double margin = is_on_bone(x, shape) ? 0.5 * shape.section(x).wall : 0.0;
  if (!is_on_bone(x, shape) || x < margin || x > shape.length() - margin) {
    problems.error(where + ".position",
                   fmt::format("A force of the load \"{}\" acts at {} along the bone, which is {} long; keep it "
                               "half a wall off its ends: from {} to {}.",
                               load.name, text(force.position), text(construct.bone.length), text(margin * mm),
                               text((shape.length() - margin) * mm)));
    return;
  }
  const BoneSection section = shape.section(x);
  const CutThroughBone cut(only(construct.fractures), shape);
  const Eigen::Vector2d outer = section.outer().at_angle(around);
  const Eigen::Vector3d place = section.point(outer),
                        inner = section.point(outer * (1.0 - section.wall / outer.norm()));
  const double off = std::min(cut.edge_distance(place), cut.edge_distance(inner));
  if (off < margin || cut.is_distal(place) != cut.is_distal(inner))
    problems.error(
        where + ".position",
        fmt::format("A force of the load \"{}\" acts at {} along the bone, within the fracture or on its "
                    "edge; keep it at least {} from the edge, on one fragment.",
                    load.name, text(force.position), text(margin * mm)));
}

}  // namespace

void check_load_places(const Construct& construct, const std::vector<PlacedScrew>& screws, const BoneShape& shape,
                       ProblemList& problems) {
  check_rollers(construct, screws, shape, problems);
  for (std::size_t i = 0; i < construct.loads.size(); ++i)
    for (std::size_t k = 0; k < construct.loads[i].forces.size(); ++k)
      check_force_place(construct.loads[i], construct.loads[i].forces[k],
                        fmt::format("{}.force[{}]", path_of_load(i), k), construct, shape, problems);
}

}  // namespace gapstrain::models
