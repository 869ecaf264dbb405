#include "viz/chart.h"

#include "viz/ticks.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numeric>
#include <optional>
#include <utility>

namespace gapstrain::viz {

namespace {

// The part of a segment between two levels of y.
std::optional<std::pair<Pixel, Pixel>> between(Pixel from, Pixel to, double low, double high) {
  const auto cut = [&](double level) {
    return Pixel(from + (to - from) * ((level - from.y()) / (to.y() - from.y())));
  };
  if (std::max(from.y(), to.y()) < low || std::min(from.y(), to.y()) > high) return std::nullopt;
  const Pixel a = from.y() < low ? cut(low) : from.y() > high ? cut(high) : from;
  const Pixel b = to.y() < low ? cut(low) : to.y() > high ? cut(high) : to;
  return std::pair(a, b);
}

}  // namespace

Axis round_axis(double low, double high, int parts) {
  low = std::min(low, 0.0);
  high = std::max(high, 0.0);
  if (!(high - low > 0.0)) return {-1.0, 1.0, 0.5};
  double step = round_step(high - low, parts);
  Axis axis{step * std::floor(low / step + 1e-9), step * std::ceil(high / step - 1e-9), step};
  if (std::lround((axis.high - axis.low) / step) > parts) {
    step = round_step(1.001 * step * parts, parts);
    axis = {step * std::floor(low / step + 1e-9), step * std::ceil(high / step - 1e-9), step};
  }
  return axis;
}

Pixel Panel::at(double x_value, double y_value) const {
  return {area.left + area.width() * (x_value - x.low) / (x.high - x.low),
          area.bottom + area.height() * (y_value - y.low) / (y.high - y.low)};
}

void draw_panel(Canvas& canvas, const Panel& panel, const std::string& y_name) {
  const Rect& area = panel.area;
  const LineStyle grid{.colour = ink::grid, .width = 2.0};
  for (const double tick : ticks_within(panel.x.low, panel.x.high, panel.x.step)) {
    const double x = panel.at(tick, panel.y.low).x();
    canvas.line({x, area.bottom}, {x, area.top}, grid);
  }
  for (const double tick : ticks_within(panel.y.low, panel.y.high, panel.y.step)) {
    const double y = panel.at(panel.x.low, tick).y();
    canvas.line({area.left, y}, {area.right, y}, grid);
    canvas.text({area.left - 14.0, y}, tick_text(tick, panel.y.step),
                {.size = letter::small, .across = Across::right, .upright = Upright::centre});
  }
  if (panel.y.low < 0.0 && panel.y.high > 0.0)
    canvas.line(panel.at(panel.x.low, 0.0), panel.at(panel.x.high, 0.0), {.colour = ink::text, .width = 3.0});
  canvas.frame(area, {.colour = ink::leader, .width = 2.0});
  canvas.text({area.left, area.top + 12.0}, y_name, {.bold = true});
}

void draw_x_numbers(Canvas& canvas, const Panel& panel, const std::string& x_name) {
  for (const double tick : ticks_within(panel.x.low, panel.x.high, panel.x.step))
    canvas.text({panel.at(tick, panel.y.low).x(), panel.area.bottom - 14.0}, tick_text(tick, panel.x.step),
                {.size = letter::small, .across = Across::centre, .upright = Upright::top});
  canvas.text({panel.area.centre().x(), panel.area.bottom - 56.0}, x_name,
              {.across = Across::centre, .upright = Upright::top});
}

void draw_curve(Canvas& canvas, const Panel& panel, const std::vector<double>& x, const std::vector<double>& y,
                const CurveStyle& style) {
  assert(x.size() == y.size());
  std::vector<Pixel> points;
  for (std::size_t i = 0; i < x.size(); ++i) points.push_back(panel.at(x[i], y[i]));
  const LineStyle line{style.colour, style.width, style.dash};
  std::vector<Pixel> run;
  for (std::size_t i = 1; i < points.size(); ++i) {
    const auto piece = between(points[i - 1], points[i], panel.area.bottom, panel.area.top);
    if (piece) {
      if (run.empty()) run.push_back(piece->first);
      run.push_back(piece->second);
    }
    if (!piece || piece->second != points[i]) {
      canvas.polyline(run, line);
      run.clear();
    }
  }
  canvas.polyline(run, line);
  if (style.marker == Marker::none) return;
  for (std::size_t i = style.first_marker; i < points.size(); i += style.markers_apart)
    if (points[i].y() >= panel.area.bottom && points[i].y() <= panel.area.top)
      canvas.marker(points[i], style.marker, 11.0, style.colour, style.hollow);
}

void draw_sample(Canvas& canvas, const Pixel& left, double width, const CurveStyle& style) {
  canvas.line(left, left + Pixel(width, 0.0), {style.colour, style.width, style.dash});
  canvas.marker(left + Pixel(0.5 * width, 0.0), style.marker, 11.0, style.colour, style.hollow);
}

std::vector<double> spread(std::vector<double> places, double spacing, double low, double high) {
  std::vector<std::size_t> order(places.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](auto a, auto b) { return places[a] < places[b]; });
  double least = low;
  for (const auto k : order) {
    places[k] = std::max(places[k], least);
    least = places[k] + spacing;
  }
  double most = high;
  for (auto k = order.rbegin(); k != order.rend(); ++k) {
    places[*k] = std::min(places[*k], most);
    most = places[*k] - spacing;
  }
  return places;
}

}  // namespace gapstrain::viz
