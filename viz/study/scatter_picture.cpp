#include "viz/drawing/sheet.h"
#include "viz/drawing/text_fit.h"
#include "viz/drawing/window.h"
#include "viz/study/study_limits.h"
#include "viz/study/study_sheet.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numbers>
#include <set>

namespace gapstrain::viz {

namespace {

constexpr double mark_radius = 20.0;
constexpr std::size_t most_markers = 1500;  // of all clouds; beyond, shapes could not be told apart
constexpr CurveStyle front_style{.colour = ink::text, .marker = Marker::circle, .hollow = true};

CurveStyle cloud_style(const ScatterChart& chart, std::size_t cloud) {
  const auto& meaning = chart.clouds[cloud].meaning;
  return meaning ? style_of(*meaning) : series_style(cloud, 1);
}

// Half the width over which points are spread sideways to be seen, where x has few values only; else zero.
double sideways(const Panel& panel, const std::vector<PointCloud>& clouds, std::size_t count) {
  constexpr std::size_t most_values = 40, fewest_points = 10;
  std::set<double> values;
  for (const auto& cloud : clouds)
    for (const double x : cloud.x) {
      if (std::isfinite(x)) values.insert(x);
      if (values.size() > most_values) return 0.0;
    }
  if (count < fewest_points * values.size()) return 0.0;
  double half = 30.0;
  for (auto value = values.begin(); value != values.end() && std::next(value) != values.end(); ++value)
    half = std::min(half, 0.3 * (panel.at(*std::next(value), panel.y.low) - panel.at(*value, panel.y.low)).x());
  return half;
}

// Evenly spread whatever their order and number: multiples of the golden section.
void move_sideways(std::vector<Pixel>& places, double half) {
  for (std::size_t i = 0; i < places.size(); ++i) {
    const double turn = static_cast<double>(i) * std::numbers::phi;
    places[i].x() += half * (2.0 * (turn - std::floor(turn)) - 1.0);
  }
}

std::vector<Pixel> places_of(const Panel& panel, const std::vector<double>& x, const std::vector<double>& y) {
  std::vector<Pixel> places;
  for (std::size_t i = 0; i < x.size(); ++i) {
    const Pixel place = panel.at(x[i], y[i]);
    if (place.allFinite()) places.push_back(place);
  }
  return places;
}

void draw_cloud(Canvas& canvas, const std::vector<Pixel>& places, CurveStyle style, std::size_t of_all) {
  if (of_all > most_markers) {
    // Radius and opacity fall so that the ink of all dots grows slowly only.
    const double decades = std::log10(static_cast<double>(of_all) / most_markers);
    style.colour.opacity = std::clamp(0.5 - 0.2 * decades, 0.14, 0.5);
    canvas.dots(places, std::clamp(4.5 - 1.4 * decades, 1.8, 4.5), style.colour);
    return;
  }
  style.colour.opacity = of_all > 60 ? 0.6 : 0.9;
  for (const auto& place : places)
    canvas.marker(place, style.marker, of_all > 300 ? 6.0 : 9.0, style.colour, style.hollow);
}

std::vector<double> stepped(const std::vector<double>& values, bool repeats_last) {
  std::vector<double> corners;
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (i > 0) corners.push_back(values[repeats_last ? i - 1 : i]);
    corners.push_back(values[i]);
  }
  return corners;
}

void draw_front(Canvas& canvas, const Panel& panel, const Front& front) {
  CurveStyle line = front_style;
  line.marker = Marker::none;
  if (front.steps)
    draw_curve(canvas, panel, stepped(front.x, false), stepped(front.y, true), line);
  else
    draw_curve(canvas, panel, front.x, front.y, line);
  for (const auto& place : places_of(panel, front.x, front.y))
    canvas.marker(place, front_style.marker, 11.0, front_style.colour, front_style.hollow);
}

// Names beside their points: the nearest of the places round each where it covers no other name and no mark.
void draw_marks(Canvas& canvas, const Panel& panel, const std::vector<MarkedPoint>& marked) {
  const TextStyle style{.size = letter::small, .across = Across::centre, .upright = Upright::centre, .bold = true};
  std::vector<Pixel> places;
  std::vector<std::string> names;
  for (const auto& mark : marked) {
    const Pixel place = panel.at(mark.x, mark.y);
    if (!place.allFinite()) continue;
    places.push_back(place);
    names.push_back(shortened(canvas, mark.name, style, 0.45 * panel.area.width()));
  }
  std::vector<Rect> taken;
  for (const auto& place : places)
    taken.push_back(
        {place.x() - mark_radius, place.y() - mark_radius, place.x() + mark_radius, place.y() + mark_radius});
  const auto free = [&](const Rect& box) {
    const Rect& area = panel.area;
    return box.left > area.left && box.right < area.right && box.bottom > area.bottom && box.top < area.top &&
           std::none_of(taken.begin(), taken.end(), [&](const Rect& other) {
             return box.left < other.right && other.left < box.right && box.bottom < other.top &&
                    other.bottom < box.top;
           });
  };
  const auto box_beside = [&](std::size_t m) {
    const Pixel half = 0.5 * canvas.text_size(names[m], style) + Pixel(12.0, 8.0);
    Rect box{};
    for (const double distance : {50.0, 90.0, 140.0, 200.0, 280.0, 380.0})
      for (const double degrees : {45.0, 135.0, -45.0, -135.0, 0.0, 180.0, 90.0, -90.0}) {
        const double angle = degrees * std::numbers::pi / 180.0;
        const Pixel centre =
            places[m] + Pixel(std::cos(angle) * (distance + half.x()), std::sin(angle) * (distance + half.y()));
        box = {centre.x() - half.x(), centre.y() - half.y(), centre.x() + half.x(), centre.y() + half.y()};
        if (free(box)) return box;
      }
    return box;
  };
  for (std::size_t m = 0; m < places.size(); ++m) taken.push_back(box_beside(m));
  for (std::size_t m = 0; m < places.size(); ++m) {
    const Rect& box = taken[places.size() + m];
    const Pixel end(std::clamp(places[m].x(), box.left, box.right),
                    std::clamp(places[m].y(), box.bottom, box.top));
    canvas.line(places[m], end, {.colour = ink::text, .width = 3.0});
    canvas.marker(places[m], Marker::diamond, mark_radius, ink::white, false);
    canvas.marker(places[m], Marker::diamond, 0.8 * mark_radius, ink::text, false);
  }
  for (std::size_t m = 0; m < places.size(); ++m) {
    const Rect& box = taken[places.size() + m];
    canvas.fill(box, ink::white);
    canvas.frame(box, {.colour = ink::leader, .width = 2.0});
    canvas.text(box.centre(), names[m], style);
  }
}

}  // namespace

void draw_scatter(const Display& display, const ScatterChart& chart, const std::filesystem::path& file) {
  Range x{chart.x.logarithmic}, y{chart.y.logarithmic};
  std::size_t count = 0, left_out = 0;
  const auto add = [&](const std::vector<double>& xs, const std::vector<double>& ys, const std::string& name) {
    check_same_length(xs.size(), ys.size(), "x and y of " + name);
    for (std::size_t i = 0; i < xs.size(); ++i) {
      if (!x.takes(xs[i]) || !y.takes(ys[i])) {
        ++left_out;
        continue;
      }
      x.add(xs[i]);
      y.add(ys[i]);
    }
  };
  const std::size_t shown = std::min(chart.clouds.size(), most_series);
  std::vector<LegendEntry> legend;
  for (std::size_t c = 0; c < shown; ++c) {
    const auto& cloud = chart.clouds[c];
    add(cloud.x, cloud.y, cloud.name);
    count += cloud.x.size();
    legend.push_back({cloud.name, cloud_style(chart, c), Sample::dot});
  }
  if (chart.front) {
    add(chart.front->x, chart.front->y, chart.front->name);
    legend.push_back({chart.front->name, front_style, Sample::curve});
  }
  for (const auto& mark : chart.marked) add({mark.x}, {mark.y}, mark.name);
  const bool nothing = x.empty;
  x.add_limits(chart.x_limits);
  y.add_limits(chart.y_limits);

  Window window(display, study::height);
  window.draw([&](Canvas& canvas) {
    Panel panel;
    panel.x = x.axis(10, 0.03);
    panel.y = y.axis(8, 0.03);
    const auto names = limit_names(chart.y_limits, panel.y);
    const double legend_top = sheet::caution_height + 16.0 + legend_height(canvas, legend);
    panel.area = {numbers_room(canvas, panel.y), legend_top + study::under_panel,
                  picture_width - std::max(side_room(canvas, names), 100.0),
                  study::height - sheet::head_height - 60.0};
    draw_limit_bands(canvas, panel, chart.y_limits, Direction::level);
    draw_limit_bands(canvas, panel, chart.x_limits, Direction::upright);
    draw_panel(canvas, panel, chart.y.name);
    draw_x_numbers(canvas, panel, chart.x.name);
    const double aside = sideways(panel, chart.clouds, count);
    draw_head(canvas, study::height, chart.words.title,
              with_remarks(chart.words.subtitle,
                           {first_of(shown, chart.clouds.size(), "groups"), left_out_remark(left_out, "point"),
                            aside > 0.0 ? "Dots are spread sideways to be seen" : ""}));
    for (std::size_t c = 0; c < shown; ++c) {
      auto places = places_of(panel, chart.clouds[c].x, chart.clouds[c].y);
      move_sideways(places, aside);
      draw_cloud(canvas, places, cloud_style(chart, c), count);
    }
    draw_limit_lines(canvas, panel, chart.y_limits, Direction::level);
    if (chart.front) draw_front(canvas, panel, *chart.front);
    draw_marked_values(canvas, panel, {}, chart.x_limits);
    draw_marks(canvas, panel, chart.marked);
    draw_side_names(canvas, panel, names);
    if (nothing) draw_nothing(canvas, panel.area);
    draw_legend(canvas, legend_top, legend);
    draw_caution(canvas);
  });
  window.write(file);
}

}  // namespace gapstrain::viz
