#include "models/geometry/bone_shape.h"

#include "models/geometry/anatomical_axes.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace gapstrain::models {

namespace {

constexpr double full_turn = 2.0 * std::numbers::pi;

AcrossShaft bow(const BoneStation& station, Aspect aspect) {
  return in_construct(station.bow_lateral.value(), station.bow_cranial.value(), aspect);
}

Length width_along_z(const BoneStation& station, Aspect aspect) {
  const bool faces_cranial_or_caudal = aspect == Aspect::cranial || aspect == Aspect::caudal;
  return faces_cranial_or_caudal ? station.width_craniocaudal : station.width_mediolateral;
}

Length width_along_y(const BoneStation& station, Aspect aspect) {
  const bool faces_cranial_or_caudal = aspect == Aspect::cranial || aspect == Aspect::caudal;
  return faces_cranial_or_caudal ? station.width_mediolateral : station.width_craniocaudal;
}

template <class Read>
MonotoneCubic along_bone(const Bone& bone, Read read) {
  if (bone.stations.empty()) throw std::invalid_argument("A bone needs at least one station.");
  std::vector<double> positions, values;
  for (const BoneStation& station : bone.stations) {
    positions.push_back(station.position.value());
    values.push_back(read(station));
  }
  // Sections are constant beyond the outer stations: a slope there would kink the surface.
  using EndSlope = MonotoneCubic::EndSlope;
  const double margin = 1e-9 * bone.length.value();
  const auto first = positions.front() > margin ? EndSlope::level : EndSlope::secant;
  const auto last = positions.back() < bone.length.value() - margin ? EndSlope::level : EndSlope::secant;
  return {std::move(positions), std::move(values), first, last};
}

}  // namespace

Eigen::Vector3d BoneSection::point(const Eigen::Vector2d& in_section) const {
  return centre + in_section.x() * y_axis + in_section.y() * z_axis;
}

Eigen::Vector2d BoneSection::in_section(const Eigen::Vector3d& point) const {
  const Eigen::Vector3d arm = point - centre;
  return {arm.dot(y_axis), arm.dot(z_axis)};
}

BoneShape::BoneShape(const Bone& bone, Aspect plate_aspect)
    : length_(bone.length.value()),
      semi_y_(along_bone(bone, [&](const auto& s) { return width_along_y(s, plate_aspect).value() / 2.0; })),
      semi_z_(along_bone(bone, [&](const auto& s) { return width_along_z(s, plate_aspect).value() / 2.0; })),
      wall_(along_bone(bone, [](const auto& s) { return s.cortex.value(); })),
      bow_y_(along_bone(bone, [&](const auto& s) { return bow(s, plate_aspect).y; })),
      bow_z_(along_bone(bone, [&](const auto& s) { return bow(s, plate_aspect).z; })) {
  double widest = 0.0, furthest = 0.0;
  for (const BoneStation& station : bone.stations) {
    widest =
        std::max({widest, station.width_mediolateral.value() / 2.0, station.width_craniocaudal.value() / 2.0});
    const AcrossShaft offset = bow(station, plate_aspect);
    furthest = std::max(furthest, std::hypot(offset.y, offset.z));
  }
  reach_ = 2.0 * (widest + furthest);
  tabulate_arc_length();
}

BoneSection BoneShape::section(double x) const {
  const double inside = std::clamp(x, 0.0, length_);
  BoneSection section;
  section.semi_y = semi_y_.value(inside);
  section.semi_z = semi_z_.value(inside);
  section.wall = wall_.value(inside);
  section.centre = {x, bow_y_.value(inside), bow_z_.value(inside)};
  section.tangent = Eigen::Vector3d(1.0, bow_y_.slope(inside), bow_z_.slope(inside)).normalized();
  const Eigen::Vector3d& t = section.tangent;
  section.z_axis = (Eigen::Vector3d::UnitZ() - t.z() * t).normalized();
  section.y_axis = section.z_axis.cross(t);
  return section;
}

double BoneShape::axis_coordinate(const Eigen::Vector3d& point) const {
  // Zero of the point's offset along the tangent. Its derivative by x is -1 but for the bow's curvature, which the
  // bracket below guards against.
  const auto offset = [&](double x) {
    const BoneSection here = section(x);
    return here.tangent.dot(point - here.centre);
  };
  if (offset(0.0) <= 0.0) return 0.0;
  if (offset(length_) >= 0.0) return length_;
  double low = 0.0, high = length_;
  double x = std::clamp(point.x(), low, high);
  for (int step = 0; step < 100; ++step) {
    const double value = offset(x);
    if (std::abs(value) < 1e-13 * length_) break;
    (value > 0.0 ? low : high) = x;
    double next = x + value;
    if (!(next > low && next < high)) next = 0.5 * (low + high);
    if (next == x) break;
    x = next;
  }
  return x;
}

BoneSection BoneShape::section_through(const Eigen::Vector3d& point) const {
  return section(axis_coordinate(point));
}

double BoneShape::depth(const Eigen::Vector3d& point) const {
  const BoneSection here = section_through(point);
  return here.outer().depth(here.in_section(point));
}

mesh::SurfacePoint BoneShape::mid_surface(double u, double x) const {
  const BoneSection here = section(x);
  const Ellipse outer = here.outer();
  const double angle = parameter(u);
  const Eigen::Vector2d normal = outer.normal(angle);
  const Eigen::Vector2d place = outer.point(angle) - 0.5 * here.wall * normal;

  mesh::SurfacePoint point;
  point.position = here.point(place);
  point.thickness = here.wall;
  const double curvature = outer.curvature(angle);
  point.curvature = curvature / (1.0 - 0.5 * here.wall * curvature);
  point.stretch = mid_speed(here, angle) / mid_speed(largest_, angle);

  // The normal is square to the curve round the section and to the change of `position` by x at a fixed parameter,
  // which has a part `along` the tangent and a `lift` along the section's normal. The parts of the lift: growing
  // semi-axes, growing wall, and the turn of the section's axes about the tangent where the bow leaves a plane.
  const double inside = std::clamp(x, 0.0, length_);
  const Eigen::Vector3d bow_slope(1.0, bow_y_.slope(inside), bow_z_.slope(inside));
  const Eigen::Vector3d bow_bend(0.0, bow_y_.second_derivative(inside), bow_z_.second_derivative(inside));
  const Eigen::Vector3d& t = here.tangent;
  const Eigen::Vector3d tangent_slope = (bow_bend - t * t.dot(bow_bend)) / bow_slope.norm();
  const double turn = -t.z() * here.y_axis.dot(tangent_slope) / std::hypot(t.x(), t.y());
  const Eigen::Vector2d growth(semi_y_.slope(inside) * std::sin(angle), semi_z_.slope(inside) * std::cos(angle));
  const Eigen::Vector2d turned(turn * place.y(), -turn * place.x());
  const double along = bow_slope.norm() - tangent_slope.dot(point.position - here.centre);
  const double lift = normal.dot(growth + turned) - 0.5 * wall_.slope(inside);
  point.normal = (along * (normal.x() * here.y_axis + normal.y() * here.z_axis) - lift * t).normalized();
  return point;
}

Eigen::Vector2d BoneShape::unrolled(const Eigen::Vector3d& point) const {
  const double x = axis_coordinate(point);
  const BoneSection here = section(x);
  double angle = here.outer().nearest_parameter(here.in_section(point));
  if (angle < 0.0) angle += full_turn;
  const double u = arc_length(angle);
  return {u < perimeter_ ? u : 0.0, x};
}

double BoneShape::bed(double x) const {
  // First as if the section were square to x; then regula falsi steps on the true sections' level function.
  const BoneSection here = section(x);
  const double offset = here.centre.y() / here.semi_y;
  if (std::abs(offset) >= 1.0) return here.centre.z();
  double z = here.centre.z() + here.semi_z * std::sqrt(1.0 - offset * offset);
  const auto level = [&](double height) {
    const Eigen::Vector3d point(x, 0.0, height);
    const BoneSection through = section_through(point);
    const Eigen::Vector2d place = through.in_section(point);
    return std::hypot(place.x() / through.semi_y, place.y() / through.semi_z) - 1.0;
  };
  for (int step = 0; step < 20; ++step) {
    const double value = level(z);
    if (std::abs(value) < 1e-14) break;
    const double by = 1e-4 * here.semi_z;
    const double slope = (level(z + by) - level(z - by)) / (2.0 * by);
    const double change = -value / slope;
    z += change;
    if (std::abs(change) < 1e-13 * here.semi_z) break;
  }
  return z;
}

double BoneShape::mid_speed(const BoneSection& section, double parameter) const {
  const Ellipse outer = section.outer();
  return outer.speed(parameter) * (1.0 - 0.5 * section.wall * outer.curvature(parameter));
}

}  // namespace gapstrain::models
