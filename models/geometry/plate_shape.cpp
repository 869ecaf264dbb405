#include "models/geometry/plate_shape.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>
#include <utility>

namespace gapstrain::models {

namespace {

constexpr int pieces = 400;

// Linear between the sections, constant beyond.
double at(const std::vector<PlateSection>& sections, Length PlateSection::*size, double along) {
  const auto above = std::find_if(sections.begin(), sections.end(),
                                  [&](const PlateSection& s) { return s.position.value() > along; });
  if (above == sections.begin()) return (sections.front().*size).value();
  if (above == sections.end()) return (sections.back().*size).value();
  const PlateSection& one = *(above - 1);
  const PlateSection& two = *above;
  const double share = (along - one.position.value()) / (two.position - one.position).value();
  return std::lerp((one.*size).value(), (two.*size).value(), share);
}

double bed_slope_angle(const BoneShape& bone, double x) {
  const double step = 1e-4 * bone.length();
  return std::atan2(bone.bed(x + step) - bone.bed(x - step), 2.0 * step);
}

}  // namespace

PlateShape::PlateShape(const Plate& plate, const BoneShape& bone) : sections_(plate.sections) {
  if (sections_.empty()) throw std::invalid_argument("A plate needs at least one section.");
  if (!(plate.length.value() > 0.0)) throw std::invalid_argument("A plate's length must be above zero.");
  if (plate.contour == Contour::follows_bone)
    follow(plate, bone);
  else
    lay_straight(plate, bone);
}

void PlateShape::follow(const Plate& plate, const BoneShape& bone) {
  const auto lifted = [&](double bed_x, double along) -> Knot {
    const double angle = bed_slope_angle(bone, bed_x);
    const double height = plate.standoff.value() + 0.5 * thickness(along);
    return {along, bed_x - height * std::sin(angle), bone.bed(bed_x) + height * std::cos(angle), angle};
  };

  // The place of the bed whose normal goes through the plate's end.
  const double end_x = plate.proximal_end.value();
  double bed_x = end_x;
  for (int step = 0; step < 20; ++step) bed_x += end_x - lifted(bed_x, 0.0).x;

  const double step = plate.length.value() / pieces;
  knots_.push_back(lifted(bed_x, 0.0));
  // Over a hollow bed the plate is shorter than the bed, over a crest longer: go on until its length is used up.
  while (knots_.back().along < plate.length.value() && knots_.size() < 4 * pieces) {
    bed_x += step;
    const Knot& last = knots_.back();
    Knot next = lifted(bed_x, last.along + step);
    next.along = last.along + std::hypot(next.x - last.x, next.z - last.z);
    knots_.push_back(next);
  }
}

void PlateShape::lay_straight(const Plate& plate, const BoneShape& bone) {
  const double length = plate.length.value();
  const double start = plate.proximal_end.value();
  const double angle = std::atan2(bone.bed(start + length) - bone.bed(start), length);
  const Eigen::Vector2d along(std::cos(angle), std::sin(angle)), normal(-std::sin(angle), std::cos(angle));

  // Of the bed along the plate's normal; the underside keeps the standoff there.
  double highest = -std::numeric_limits<double>::infinity();
  for (int i = 0; i <= pieces; ++i) {
    const double x = start + length * std::cos(angle) * i / pieces;
    highest = std::max(highest, normal.dot(Eigen::Vector2d(x, bone.bed(x))));
  }
  const double height = highest + plate.standoff.value() + 0.5 * thickness(0.0);
  const Eigen::Vector2d end(start, (height + start * std::sin(angle)) / std::cos(angle));
  for (int i = 0; i <= pieces; ++i) {
    const double s = length * i / pieces;
    const Eigen::Vector2d place = end + s * along + 0.5 * (thickness(s) - thickness(0.0)) * normal;
    knots_.push_back({s, place.x(), place.y(), angle});
  }
}

std::size_t PlateShape::piece_at(double along) const {
  const auto above = std::upper_bound(knots_.begin() + 1, knots_.end() - 1, along,
                                      [](double value, const Knot& knot) { return value < knot.along; });
  return static_cast<std::size_t>(above - knots_.begin()) - 1;
}

mesh::SurfacePoint PlateShape::mid_surface(double along, double across) const {
  const std::size_t i = piece_at(along);
  const Knot& one = knots_[i];
  const Knot& two = knots_[i + 1];
  const double length = two.along - one.along;
  const double share = (along - one.along) / length;
  // Not extrapolated, unlike the place: beyond its ends the plate is straight.
  const double angle = std::lerp(one.slope_angle, two.slope_angle, std::clamp(share, 0.0, 1.0));

  mesh::SurfacePoint point;
  point.position = {std::lerp(one.x, two.x, share), across, std::lerp(one.z, two.z, share)};
  point.normal = {-std::sin(angle), 0.0, std::cos(angle)};
  point.thickness = thickness(along);
  point.curvature = (one.slope_angle - two.slope_angle) / length;
  return point;
}

double PlateShape::thickness(double along) const { return at(sections_, &PlateSection::thickness, along); }

double PlateShape::width(double along) const { return at(sections_, &PlateSection::width, along); }

double PlateShape::x_at(double along) const { return mid_surface(along, 0.0).position.x(); }

double PlateShape::along_at(double x) const {
  const auto above = std::upper_bound(knots_.begin() + 1, knots_.end() - 1, x,
                                      [](double value, const Knot& knot) { return value < knot.x; });
  const Knot& one = *(above - 1);
  const Knot& two = *above;
  return std::lerp(one.along, two.along, (x - one.x) / (two.x - one.x));
}

}  // namespace gapstrain::models
