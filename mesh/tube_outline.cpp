#include "mesh/tube_outline.h"

#include "mesh/divide_curve.h"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace gapstrain::mesh {

namespace {

class TubeOutlineBuilder {
 public:
  TubeOutlineBuilder(const UnrolledTube& tube, double seam)
      : tube_(tube), seam_(seam), outline_{{}, SizeField(tube.size_max, tube.growth), {}, {}, {}, {}, {}} {
    add_level_curves();
    add_rings();
    add_sources();
    refine_gaps();
    for (Level& level : outline_.levels) add_level_nodes(level);
    for (std::size_t band = 0; band + 1 < outline_.levels.size(); ++band) add_band(band);
    for (std::size_t spot = 0; spot < tube.spots.size(); ++spot) add_spot_face(spot);
  }

  TubeOutline result() && { return std::move(outline_); }

 private:
  double ring_size(std::size_t spot) const {
    return std::numbers::pi * (tube_.spots[spot].radius_s + tube_.spots[spot].radius_x) / tube_.ring_elements;
  }

  Capsule capsule(std::size_t spot) const {
    return capsule_round_ellipse(places_[spot], tube_.spots[spot].radius_s, tube_.spots[spot].radius_x);
  }

  int add_curve(std::vector<int> nodes) {
    outline_.plane.curves.push_back(std::move(nodes));
    return static_cast<int>(outline_.plane.curves.size()) - 1;
  }

  void add_level_curves() {
    const std::string names[2] = {tube_.cut ? "end" : "end:0", tube_.cut ? "end" : "end:1"};
    outline_.levels.push_back({names[0], [](double) { return 0.0; }});
    outline_.levels.push_back({names[1], [length = tube_.length](double) { return length; }});
    for (std::size_t k = 0; k < tube_.section_lines.size(); ++k)
      outline_.levels.push_back(
          {fmt::format("section:{}", k), [x = tube_.section_lines[k]](double) { return x; }});
    if (tube_.cut) outline_.levels.push_back({"cut", *tube_.cut});
    std::stable_sort(outline_.levels.begin(), outline_.levels.end(),
                     [this](const Level& a, const Level& b) { return a.x(seam_) < b.x(seam_); });

    constexpr int samples = 96;
    for (std::size_t k = 0; k + 1 < outline_.levels.size(); ++k) {
      const Level &below = outline_.levels[k], &above = outline_.levels[k + 1];
      for (int i = 0; i < samples; ++i) {
        const double s = seam_ + tube_.perimeter * i / samples;
        if (!(above.x(s) - below.x(s) > 0.1 * tube_.size_cut))
          throw MeshError(fmt::format("The lines \"{}\" and \"{}\" round the tube meet or cross at s = {:.4g} mm.",
                                      below.group, above.group, s));
      }
    }
  }

  void add_rings() {
    for (const Spot& spot : tube_.spots) {
      // The s of the sheet that stands for the spot's own.
      const double s = spot.s - tube_.perimeter * std::floor((spot.s - seam_) / tube_.perimeter);
      places_.emplace_back(s, spot.x);
      std::vector<int> ring;
      for (int k = 0; k < tube_.ring_elements; ++k) {
        const double angle = 2.0 * std::numbers::pi * k / tube_.ring_elements;
        const Eigen::Vector2d arm(spot.radius_s * std::cos(angle), spot.radius_x * std::sin(angle));
        ring.push_back(outline_.plane.add_point(places_.back() + arm));
      }
      ring.push_back(ring.front());
      ring_curves_.push_back(add_curve(ring));
      ring.pop_back();
      outline_.rings.push_back(std::move(ring));
      centres_.push_back(outline_.plane.add_point(places_.back()));
    }
  }

  // The source and those of its images one perimeter off that are felt on the sheet.
  void add_source(const Capsule& capsule, double size) {
    const double reach = outline_.size.reach(size) + capsule.radius;
    for (const double shift : {0.0, -tube_.perimeter, tube_.perimeter}) {
      const Eigen::Vector2d move(shift, 0.0);
      const auto [first, last] = std::minmax({capsule.start.x() + shift, capsule.end.x() + shift});
      if (last > seam_ - reach && first < seam_ + tube_.perimeter + reach)
        outline_.size.add({capsule.start + move, capsule.end + move, capsule.radius}, size);
    }
  }

  void add_sources() {
    for (std::size_t spot = 0; spot < places_.size(); ++spot) add_source(capsule(spot), ring_size(spot));
    if (!tube_.cut) return;
    constexpr int pieces = 48;
    const auto point = [this](int i) {
      const double s = seam_ + tube_.perimeter * i / pieces;
      return Eigen::Vector2d(s, (*tube_.cut)(s));
    };
    for (int i = 0; i < pieces; ++i) add_source({point(i), point(i + 1), 0.0}, tube_.size_cut);
  }

  // Two elements across the gap between `point` on a ring and what is `gap` away, but none much below a ring's
  // own.
  void refine_gap(const Eigen::Vector2d& point, double gap, std::size_t spot) {
    add_source({point, point, gap}, std::max(0.5 * gap, 0.3 * ring_size(spot)));
  }

  // Distance from the ring to the level, or less than zero when they meet, and the node where it is least.
  std::pair<double, Eigen::Vector2d> gap_to(const Level& level, std::size_t spot) const {
    double least = std::numeric_limits<double>::infinity(), side = 0.0;
    Eigen::Vector2d nearest = places_[spot];
    for (const int node : outline_.rings[spot]) {
      const Eigen::Vector2d& point = outline_.plane.points[node];
      const double ahead = point.y() - level.x(point.x());
      const double span = 0.1 * ring_size(spot);
      const double slope = (level.x(point.x() + span) - level.x(point.x() - span)) / (2.0 * span);
      const double gap = std::abs(ahead) / std::hypot(1.0, slope);
      if (ahead * side < 0.0) return {-1.0, point};
      side = ahead;
      if (gap < least) {
        least = gap;
        nearest = point;
      }
    }
    return {least, nearest};
  }

  void refine_gaps() {
    for (std::size_t spot = 0; spot < places_.size(); ++spot) {
      const double closest = 0.25 * ring_size(spot);
      for (const Level& level : outline_.levels) {
        const auto [gap, point] = gap_to(level, spot);
        if (gap < closest)
          throw MeshError(fmt::format("The spot \"{}\" touches the line \"{}\" round the tube.",
                                      tube_.spots[spot].name, level.group));
        if (gap < 2.0 * ring_size(spot)) refine_gap(point, gap, spot);
      }
      for (std::size_t other = 0; other < places_.size(); ++other)
        if (other != spot) refine_gap_between(spot, other);
    }
    for (std::size_t spot = 0; spot < places_.size(); ++spot)
      if (places_[spot].y() < 0.0 || places_[spot].y() > tube_.length)
        throw MeshError(fmt::format("The spot \"{}\" lies beyond the tube's end.", tube_.spots[spot].name));
  }

  void refine_gap_between(std::size_t spot, std::size_t other) {
    const Spot &a = tube_.spots[spot], &b = tube_.spots[other];
    Eigen::Vector2d image = places_[other] - places_[spot];
    image.x() = std::remainder(image.x(), tube_.perimeter);
    const double sizes = std::max({a.radius_s, a.radius_x}) + std::max(b.radius_s, b.radius_x);
    if (image.norm() > sizes + 2.0 * ring_size(spot)) return;
    const Capsule round = capsule_round_ellipse(places_[spot] + image, b.radius_s, b.radius_x);
    double gap = round.distance(places_[spot]);
    Eigen::Vector2d nearest = places_[spot];
    for (const int node : outline_.rings[spot]) {
      const double distance = round.distance(outline_.plane.points[node]);
      if (distance >= gap) continue;
      gap = distance;
      nearest = outline_.plane.points[node];
    }
    if (gap < 0.25 * ring_size(spot))
      throw MeshError(fmt::format("The spots \"{}\" and \"{}\" overlap or touch.", a.name, b.name));
    if (gap < 2.0 * ring_size(spot)) refine_gap(nearest, gap, spot);
  }

  void add_level_nodes(Level& level) {
    const auto curve = [&level](double s) { return Eigen::Vector2d(s, level.x(s)); };
    for (const double s : divide_curve(curve, seam_, seam_ + tube_.perimeter, outline_.size, 8))
      level.nodes.push_back(outline_.plane.add_point(curve(s)));
    // The level is periodic up to rounding; its twin has to be at the same x to the bit.
    const int first = level.nodes.front(), last = level.nodes.back();
    outline_.plane.points[last] = outline_.plane.points[first] + Eigen::Vector2d(tube_.perimeter, 0.0);
    outline_.seam.emplace_back(first, last);
    level_curves_.push_back(add_curve(level.nodes));
  }

  void add_band(std::size_t band) {
    const Level &below = outline_.levels[band], &above = outline_.levels[band + 1];
    std::vector<int> left{below.nodes.front()}, right{below.nodes.back()};
    const auto along_seam = [this](double x) { return Eigen::Vector2d(seam_, x); };
    const auto division = divide_curve(along_seam, outline_.plane.points[left.front()].y(),
                                       outline_.plane.points[above.nodes.front()].y(), outline_.size);
    for (std::size_t i = 1; i + 1 < division.size(); ++i) {
      left.push_back(outline_.plane.add_point({seam_, division[i]}));
      right.push_back(outline_.plane.add_point({seam_ + tube_.perimeter, division[i]}));
      outline_.seam.emplace_back(left.back(), right.back());
    }
    left.push_back(above.nodes.front());
    right.push_back(above.nodes.back());
    const int left_curve = add_curve(std::move(left)), right_curve = add_curve(std::move(right));

    PlaneFace face;
    face.loops.push_back(
        {{level_curves_[band], true}, {right_curve, true}, {level_curves_[band + 1], false}, {left_curve, false}});
    for (std::size_t spot = 0; spot < places_.size(); ++spot)
      if (band_of(spot) == band) face.loops.push_back({{ring_curves_[spot], false}});
    outline_.plane.faces.push_back(std::move(face));
    outline_.band_of_face.push_back(static_cast<int>(band));
    outline_.spot_of_face.push_back(-1);
  }

  std::size_t band_of(std::size_t spot) const {
    std::size_t band = 0;
    while (band + 2 < outline_.levels.size() && places_[spot].y() > outline_.levels[band + 1].x(places_[spot].x()))
      ++band;
    return band;
  }

  void add_spot_face(std::size_t spot) {
    outline_.plane.faces.push_back({{{{ring_curves_[spot], true}}}, {centres_[spot]}});
    outline_.band_of_face.push_back(static_cast<int>(band_of(spot)));
    outline_.spot_of_face.push_back(static_cast<int>(spot));
  }

  const UnrolledTube& tube_;
  double seam_;
  TubeOutline outline_;
  std::vector<Eigen::Vector2d> places_;  // of the spots' centres on the sheet
  std::vector<int> centres_, ring_curves_, level_curves_;
};

}  // namespace

TubeOutline outline_tube(const UnrolledTube& tube, double seam) { return TubeOutlineBuilder(tube, seam).result(); }

}  // namespace gapstrain::mesh
