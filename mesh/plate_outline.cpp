#include "mesh/plate_outline.h"

#include "mesh/divide_curve.h"
#include "mesh/hole_rim.h"
#include "mesh/trace_faces.h"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <limits>

namespace gapstrain::mesh {

namespace {

class PlateOutlineBuilder {
 public:
  explicit PlateOutlineBuilder(const PerforatedPlate& plate)
      : plate_(plate), outline_{{}, SizeField(plate.size_max, plate.growth), {}} {
    for (const Hole& hole : plate.holes) rims_.emplace_back(hole, plate.rim_elements);
    set_stations();
    add_sources();
    add_rims();
    add_edges();
    add_ends_and_cross_lines();
    trace_faces(outline_.plane, uses_, inner_nodes_);
  }

  PlateOutline result() && { return std::move(outline_); }

 private:
  double half_width(double x) const {
    const auto& widths = plate_.widths;
    const auto above =
        std::find_if(widths.begin(), widths.end(), [x](const BarWidth& w) { return w.position > x; });
    if (above == widths.begin()) return 0.5 * widths.front().width;
    if (above == widths.end()) return 0.5 * widths.back().width;
    const BarWidth &a = *(above - 1), &b = *above;
    return 0.5 * (a.width + (b.width - a.width) * (x - a.position) / (b.position - a.position));
  }

  int add_curve(std::vector<int> nodes) {
    outline_.plane.curves.push_back(std::move(nodes));
    return static_cast<int>(outline_.plane.curves.size()) - 1;
  }

  // Places where the long edges have a node: the ends, the lines across and the bends of the width.
  void set_stations() {
    stations_ = {0.0, plate_.length};
    stations_.insert(stations_.end(), plate_.cross_lines.begin(), plate_.cross_lines.end());
    for (const BarWidth& width : plate_.widths) {
      const auto is_near = [&](double x) { return std::abs(x - width.position) < 1e-6 * plate_.length; };
      if (width.position > 0.0 && width.position < plate_.length &&
          std::none_of(stations_.begin(), stations_.end(), is_near))
        stations_.push_back(width.position);
    }
    std::sort(stations_.begin(), stations_.end());
  }

  double distance_to_edges(const Eigen::Vector2d& point) const {
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i + 1 < stations_.size(); ++i) {
      const Capsule edge{{stations_[i], half_width(stations_[i])},
                         {stations_[i + 1], half_width(stations_[i + 1])}};
      least = std::min(least, edge.distance({point.x(), std::abs(point.y())}));
    }
    return std::min({least, point.x(), plate_.length - point.x()});
  }

  // A quarter of the ligament: at least three elements across it, though edge lengths are met only on average.
  void refine_ligament(const Eigen::Vector2d& point, double gap) {
    outline_.size.add({point, point, gap}, gap / 4.0);
  }

  void add_sources() {
    for (std::size_t k = 0; k < rims_.size(); ++k) {
      const HoleRim& rim = rims_[k];
      const Hole& hole = plate_.holes[k];
      outline_.size.add(rim.capsule(), rim.edge_length());
      for (int i = 0; i < rim.elements(); ++i) {
        const Eigen::Vector2d point = rim.point(rim.length() * i / rim.elements());
        const bool is_beside =
            point.x() > 0.0 && point.x() < plate_.length && std::abs(point.y()) < half_width(point.x());
        const double gap = distance_to_edges(point);
        if (!is_beside || gap < thinnest * hole.diameter)
          throw MeshError(fmt::format("The hole at {} mm touches the outline or lies outside it.", hole.centre));
        if (gap < 4.0 * rim.edge_length()) refine_ligament(point, gap);
      }
      for (std::size_t other = 0; other < k; ++other) add_ligament(other, k);
    }
  }

  // Between two holes.
  void add_ligament(std::size_t k, std::size_t other) {
    const HoleRim &a = rims_[k], &b = rims_[other];
    const double gap = std::abs(a.centre() - b.centre()) - a.half_length() - b.half_length();
    if (gap < thinnest * std::min(plate_.holes[k].diameter, plate_.holes[other].diameter))
      throw MeshError(fmt::format("The holes at {} mm and {} mm touch or overlap.", a.centre(), b.centre()));
    const double edge = std::max(a.edge_length(), b.edge_length());
    const double side = a.centre() < b.centre() ? 1.0 : -1.0;
    const Eigen::Vector2d middle(a.centre() + side * (a.half_length() + 0.5 * gap), 0.0);
    if (gap < 4.0 * edge) outline_.size.add({middle, middle, 0.5 * gap}, gap / 4.0);
    // With the edges of both rims given, and longer than the gap is wide, only a node in it makes two cells of
    // one.
    const bool has_line = std::any_of(plate_.cross_lines.begin(), plate_.cross_lines.end(),
                                      [&](double x) { return std::abs(x - middle.x()) < 0.5 * gap; });
    if (gap < 2.5 * edge && !has_line) inner_nodes_.push_back(outline_.plane.add_point(middle));
  }

  // Where a line across the bar meets a hole, if it does.
  const HoleRim* rim_at(double x) const {
    for (const HoleRim& rim : rims_) {
      const double arm = std::abs(x - rim.centre());
      const double radius = rim.capsule().radius;
      if (arm >= rim.half_length() + rim.edge_length()) continue;
      // Next to a tangent, line and rim enclose a wedge that no good element fits in: 0.9 of a radius is 26
      // degrees.
      if (arm > rim.half_length() - 0.1 * radius)
        throw MeshError(fmt::format("The line across at {} mm grazes the hole at {} mm.", x, rim.centre()));
      return &rim;
    }
    return nullptr;
  }

  void add_rims() {
    for (const double x : plate_.cross_lines) rim_at(x);
    for (std::size_t k = 0; k < rims_.size(); ++k) {
      const HoleRim& rim = rims_[k];
      std::vector<std::pair<double, Eigen::Vector2d>> stops;  // arc length, place
      for (const double x : plate_.cross_lines) {
        if (rim_at(x) != &rim) continue;
        const double t = rim.upper_crossing(x);
        const double y = rim.point(t).y();
        stops.emplace_back(t, Eigen::Vector2d(x, y));
        stops.emplace_back(rim.length() - t, Eigen::Vector2d(x, -y));
      }
      std::sort(stops.begin(), stops.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
      std::vector<double> arcs;
      for (const auto& stop : stops) arcs.push_back(stop.first);
      const auto pieces = rim.divide(arcs);

      std::vector<int>& group = outline_.groups[fmt::format("hole:{}", k)];
      std::vector<std::size_t> starts;
      for (std::size_t i = 0; i < pieces.size(); ++i) {
        starts.push_back(group.size());
        group.push_back(outline_.plane.add_point(stops.empty() ? rim.point(pieces[i].front()) : stops[i].second));
        for (std::size_t j = 1; j + 1 < pieces[i].size(); ++j)
          group.push_back(outline_.plane.add_point(rim.point(pieces[i][j])));
      }
      starts.push_back(group.size());
      for (std::size_t i = 0; i < pieces.size(); ++i) {
        std::vector<int> curve;
        for (std::size_t j = starts[i]; j <= starts[i + 1]; ++j) curve.push_back(group[j % group.size()]);
        uses_.push_back({add_curve(std::move(curve)), false});
      }
      for (std::size_t i = 0; i < stops.size(); ++i) rim_nodes_.push_back({stops[i].second, group[starts[i]]});
    }
  }

  std::vector<int> divide(int first, int last) {
    const Eigen::Vector2d from = outline_.plane.points[first], to = outline_.plane.points[last];
    const auto line = [&](double share) -> Eigen::Vector2d { return from + share * (to - from); };
    std::vector<int> nodes{first};
    const auto division = divide_curve(line, 0.0, 1.0, outline_.size);
    for (std::size_t i = 1; i + 1 < division.size(); ++i)
      nodes.push_back(outline_.plane.add_point(line(division[i])));
    nodes.push_back(last);
    return nodes;
  }

  // Both long edges, station to station by rising x.
  void add_edges() {
    for (const double x : stations_) {
      lower_.push_back(outline_.plane.add_point({x, -half_width(x)}));
      upper_.push_back(outline_.plane.add_point({x, half_width(x)}));
    }
    for (std::size_t i = 0; i + 1 < stations_.size(); ++i) {
      uses_.push_back({add_curve(divide(lower_[i], lower_[i + 1])), true});
      uses_.push_back({add_curve(divide(upper_[i], upper_[i + 1])), false});
    }
  }

  // The node where the line across at x meets a rim, on the upper (1) or lower (-1) half.
  int rim_node(double x, double side) const {
    const auto found = std::find_if(rim_nodes_.begin(), rim_nodes_.end(), [&](const auto& entry) {
      return entry.first.x() == x && entry.first.y() * side > 0.0;
    });
    return found->second;
  }

  void add_ends_and_cross_lines() {
    uses_.push_back({add_line("end:0", {{lower_.front(), upper_.front()}}), false});
    uses_.push_back({add_line("end:1", {{lower_.back(), upper_.back()}}), true});
    for (std::size_t k = 0; k < plate_.cross_lines.size(); ++k) {
      const double x = plate_.cross_lines[k];
      const auto station = std::find(stations_.begin(), stations_.end(), x) - stations_.begin();
      std::vector<std::pair<int, int>> pieces{{lower_[station], upper_[station]}};
      if (rim_at(x)) pieces = {{lower_[station], rim_node(x, -1.0)}, {rim_node(x, 1.0), upper_[station]}};
      const int last = add_line(fmt::format("cross:{}", k), pieces);
      for (int curve = last + 1 - static_cast<int>(pieces.size()); curve <= last; ++curve) {
        uses_.push_back({curve, true});
        uses_.push_back({curve, false});
      }
    }
  }

  // Curves by rising y, all in one group; returns the last.
  int add_line(const std::string& name, const std::vector<std::pair<int, int>>& pieces) {
    int curve = -1;
    for (const auto& [first, last] : pieces) {
      curve = add_curve(divide(first, last));
      std::vector<int>& group = outline_.groups[name];
      group.insert(group.end(), outline_.plane.curves[curve].begin(), outline_.plane.curves[curve].end());
    }
    return curve;
  }

  static constexpr double thinnest = 0.05;  // ligament over diameter; less is taken for a touch

  const PerforatedPlate& plate_;
  PlateOutline outline_;
  std::vector<HoleRim> rims_;
  std::vector<double> stations_;
  std::vector<int> lower_, upper_;                          // nodes of the long edges at the stations
  std::vector<std::pair<Eigen::Vector2d, int>> rim_nodes_;  // where lines across meet rims
  std::vector<CurveUse> uses_;
  std::vector<int> inner_nodes_;
};

}  // namespace

PlateOutline outline_plate(const PerforatedPlate& plate) { return PlateOutlineBuilder(plate).result(); }

}  // namespace gapstrain::mesh
