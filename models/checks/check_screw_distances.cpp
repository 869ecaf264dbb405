#include "models/checks/checks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

// Of two spots on a wall in sums of their radii: each is a disk of the core radius with a ring of cells round it.
constexpr double least_spot_distance = 1.1;
// Of a spot's centre from the bone's end in core radii, likewise.
constexpr double least_end_distance = 2.0;

// Of a screw's axis inside the canal in core radii: a shaft that runs along the inner surface is held all along
// it, not in two walls. A choice of this program.
constexpr double least_canal_depth = 0.5;

struct Segment {
  Eigen::Vector3d from, to;
};

double core_radius(const PlacedScrew& screw) { return 0.5 * screw.screw.size.core_diameter.value(); }

// Of the shaft inside the bone.
Segment shaft_of(const PlacedScrew& screw) {
  const bool passes_both = screw.screw.cortices == 2;
  return {screw.placement.bone->near.outer, passes_both ? screw.placement.bone->far.outer : screw.placement.tip};
}

double distance(const Segment& segment, const Eigen::Vector3d& point) {
  const Eigen::Vector3d along = segment.to - segment.from;
  const double share = std::clamp(along.dot(point - segment.from) / along.squaredNorm(), 0.0, 1.0);
  return (segment.from + share * along - point).norm();
}

// Either at an end of one of them, or where both lines come closest, if that lies within both.
double distance(const Segment& one, const Segment& two) {
  double least =
      std::min({distance(one, two.from), distance(one, two.to), distance(two, one.from), distance(two, one.to)});
  const Eigen::Vector3d a = one.to - one.from, b = two.to - two.from, between = two.from - one.from;
  const double determinant = a.squaredNorm() * b.squaredNorm() - std::pow(a.dot(b), 2);
  if (determinant <= 1e-12 * a.squaredNorm() * b.squaredNorm()) return least;  // parallel
  const double on_one = (between.dot(a) * b.squaredNorm() - between.dot(b) * a.dot(b)) / determinant;
  const double on_two = (between.dot(a) * a.dot(b) - between.dot(b) * a.squaredNorm()) / determinant;
  if (on_one > 0.0 && on_one < 1.0 && on_two > 0.0 && on_two < 1.0)
    least = std::min(least, (between + on_two * b - on_one * a).norm());
  return least;
}

std::vector<Eigen::Vector3d> spots(const PlacedScrew& screw) {
  std::vector<Eigen::Vector3d> centres{screw.placement.bone->near.middle};
  if (screw.screw.cortices == 2) centres.push_back(screw.placement.bone->far.middle);
  return centres;
}

// Along the mid-surface, where the mesh needs room.
double along_wall(const BoneShape& shape, const Eigen::Vector3d& one, const Eigen::Vector3d& two) {
  const Eigen::Vector2d from = shape.unrolled(one), to = shape.unrolled(two);
  const double around = std::remainder(to.x() - from.x(), shape.perimeter());
  const double stretch = shape.mid_surface(from.x(), from.y()).stretch;
  return std::hypot(stretch * around, to.y() - from.y());
}

void check_pair(const PlacedScrew& one, const PlacedScrew& two, const BoneShape& shape, ProblemList& problems) {
  const double radii = core_radius(one) + core_radius(two);
  if (const double found = distance(shaft_of(one), shaft_of(two)); found < radii) {
    problems.error(two.path,
                   fmt::format("The {} and the {} meet in the bone: their axes come within {:.3g} mm, "
                               "and their cores need {:.3g} mm. Change the tilt of one, or leave one out.",
                               one.name, two.name, found, radii));
    return;
  }
  double closest = 2.0 * least_spot_distance * radii;
  for (const auto& spot_one : spots(one))
    for (const auto& spot_two : spots(two)) closest = std::min(closest, along_wall(shape, spot_one, spot_two));
  if (closest < least_spot_distance * radii)
    problems.error(
        two.path, fmt::format("The {} and the {} go through one cortex only {:.3g} mm apart; they need {:.3g} mm. "
                              "Change the tilt of one, or leave one out.",
                              one.name, two.name, closest, least_spot_distance * radii));
}

void check_alone(const PlacedScrew& screw, const BoneShape& shape, ProblemList& problems) {
  const double radius = core_radius(screw);
  const auto& bone = *screw.placement.bone;
  const Eigen::Vector3d half_way = 0.5 * (bone.near.inner + bone.far.inner);
  const double inside = shape.depth(half_way) - shape.section_through(half_way).wall;
  if (inside < least_canal_depth * radius) {
    problems.error(screw.path,
                   fmt::format("The {} only grazes the canal: its axis comes {:.3g} mm into it and needs {:.3g} "
                               "mm. Move it towards the bone's middle.",
                               screw.name, inside, least_canal_depth * radius));
    return;
  }
  for (const auto& spot : spots(screw)) {
    const double x = shape.unrolled(spot).y();
    const double room = std::min(x, shape.length() - x);
    if (room >= least_end_distance * radius) continue;
    problems.error(
        screw.path,
        fmt::format("The {} goes through the cortex {:.3g} mm from the bone's end; it needs {:.3g} mm. {}",
                    screw.name, room, least_end_distance * radius, way_out(screw)));
    return;
  }
}

}  // namespace

void check_screw_distances(const std::vector<PlacedScrew>& screws, const BoneShape& shape, ProblemList& problems) {
  for (std::size_t i = 0; i < screws.size(); ++i) {
    check_alone(screws[i], shape, problems);
    for (std::size_t k = 0; k < i; ++k) check_pair(screws[k], screws[i], shape, problems);
  }
}

}  // namespace gapstrain::models
