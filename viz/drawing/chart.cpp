#include "viz/drawing/chart.h"

#include "viz/drawing/text_fit.h"
#include "viz/drawing/ticks.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <numeric>
#include <optional>
#include <utility>

namespace gapstrain::viz {

namespace {

// The part of a segment between two levels of y.
std::optional<std::pair<Pixel, Pixel>> piece_between(Pixel from, Pixel to, double low, double high) {
  const auto cut = [&](double level) {
    return Pixel(from + (to - from) * ((level - from.y()) / (to.y() - from.y())));
  };
  if (std::max(from.y(), to.y()) < low || std::min(from.y(), to.y()) > high) return std::nullopt;
  const Pixel a = from.y() < low ? cut(low) : from.y() > high ? cut(high) : from;
  const Pixel b = to.y() < low ? cut(low) : to.y() > high ? cut(high) : to;
  return std::pair(a, b);
}

const LineStyle grid_style{.colour = ink::grid, .width = 2.0};

// Round limits in at most `parts` steps. @pre low < high
Axis covering(double low, double high, int parts) {
  double step = round_step(high - low, parts);
  Axis axis{step * std::floor(low / step + 1e-9), step * std::ceil(high / step - 1e-9), step};
  if (std::lround((axis.high - axis.low) / step) > parts) {
    step = round_step(1.001 * step * parts, parts);
    axis = {step * std::floor(low / step + 1e-9), step * std::ceil(high / step - 1e-9), step};
  }
  return axis;
}

}  // namespace

Axis round_axis(double low, double high, int parts) {
  low = std::min(low, 0.0);
  high = std::max(high, 0.0);
  if (!(high - low > 0.0)) return {-1.0, 1.0, 0.5};
  return covering(low, high, parts);
}

Axis close_axis(double low, double high, int parts, double near) {
  if (!(high - low > 1e-9 * std::max(std::abs(low), std::abs(high)))) {
    const double room = low == 0.0 ? 1.0 : 0.1 * std::abs(low);
    low -= room;
    high += room;
  }
  if ((low > 0.0 && low < near * high) || (high < 0.0 && high > near * low)) return round_axis(low, high, parts);
  return covering(low, high, parts);
}

Axis logarithmic_axis(double low, double high, int parts) {
  assert(low > 0.0 && low <= high);
  Axis axis{round_below(low), round_below(high), 0.5, true};
  while (axis.high < high * (1.0 - 1e-9) || axis.high <= axis.low) axis.high = round_step(1.01 * axis.high, 1);
  const double decades = std::log10(axis.high / axis.low);
  if (decades > 2.0 && 3.0 * decades > parts) axis.step = std::ceil(decades / parts);
  return axis;
}

double Axis::share(double value) const {
  return logarithmic ? std::log(value / low) / std::log(high / low) : (value - low) / (high - low);
}

std::vector<double> Axis::ticks() const {
  if (!logarithmic) return ticks_within(low, high, step);
  std::vector<double> all;
  for (const double decade : ticks_within(std::floor(std::log10(low)), std::log10(high), std::max(step, 1.0)))
    for (const double digit : {1.0, 2.0, 5.0}) {
      const double tick = digit * std::pow(10.0, decade);
      const bool wanted = step < 1.0 || digit == 1.0;
      if (wanted && tick > low * (1.0 - 1e-9) && tick < high * (1.0 + 1e-9)) all.push_back(tick);
    }
  return all;
}

std::string Axis::text(double tick) const {
  const bool plain = std::max(std::abs(low), std::abs(high)) < 1e7 && (logarithmic ? low : step) > 1e-6;
  return logarithmic || !plain ? number_text(tick) : tick_text(tick, step);
}

Pixel Panel::at(double x_value, double y_value) const {
  return {area.left + area.width() * x.share(x_value), area.bottom + area.height() * y.share(y_value)};
}

CurveStyle series_style(std::size_t series, std::size_t points) {
  assert(series < most_series);
  constexpr std::array<Marker, 4> markers{Marker::circle, Marker::square, Marker::triangle, Marker::diamond};
  static_assert(markers.size() == curve_colours.size());
  const std::size_t kind = series % markers.size(), apart = std::max<std::size_t>(points / 12, 1);
  const bool later = series >= markers.size();
  return {curve_colours[kind],
          later ? Dash::dashed : Dash::solid,
          markers[kind],
          later,
          5.0,
          (kind * apart) / curve_colours.size(),
          apart};
}

CurveStyle style_of(Meaning meaning) {
  const bool doubtful = meaning == Meaning::not_trusted;
  return {.colour = colour_of(meaning),
          .marker = meaning == Meaning::holds ? Marker::circle
                    : doubtful                ? Marker::diamond
                                              : Marker::square,
          .hollow = doubtful};
}

void draw_upright_grid(Canvas& canvas, const Panel& panel) {
  for (const double tick : panel.x.ticks()) {
    const double x = panel.at(tick, panel.y.low).x();
    canvas.line({x, panel.area.bottom}, {x, panel.area.top}, grid_style);
  }
}

void draw_level_grid(Canvas& canvas, const Panel& panel, bool numbers) {
  for (const double tick : panel.y.ticks()) {
    const double y = panel.at(panel.x.low, tick).y();
    canvas.line({panel.area.left, y}, {panel.area.right, y}, grid_style);
    if (numbers)
      canvas.text({panel.area.left - 14.0, y}, panel.y.text(tick),
                  {.size = letter::small, .across = Across::right, .upright = Upright::centre});
  }
  if (!panel.y.logarithmic && panel.y.low < 0.0 && panel.y.high > 0.0)
    canvas.line(panel.at(panel.x.low, 0.0), panel.at(panel.x.high, 0.0), {.colour = ink::text, .width = 3.0});
}

void draw_panel(Canvas& canvas, const Panel& panel, const std::string& y_name) {
  const Rect& area = panel.area;
  draw_upright_grid(canvas, panel);
  draw_level_grid(canvas, panel, true);
  canvas.frame(area, {.colour = ink::leader, .width = 2.0});
  canvas.text({area.left, area.top + 12.0}, y_name, fitted(canvas, y_name, {.bold = true}, area.width()));
}

void draw_x_numbers(Canvas& canvas, const Panel& panel, const std::string& x_name) {
  for (const double tick : panel.x.ticks())
    canvas.text({panel.at(tick, panel.y.low).x(), panel.area.bottom - 14.0}, panel.x.text(tick),
                {.size = letter::small, .across = Across::centre, .upright = Upright::top});
  const TextStyle style{.across = Across::centre, .upright = Upright::top};
  canvas.text({panel.area.centre().x(), panel.area.bottom - 56.0}, x_name,
              fitted(canvas, x_name, style, panel.area.width()));
}

void draw_curve(Canvas& canvas, const Panel& panel, const std::vector<double>& x, const std::vector<double>& y,
                const CurveStyle& style) {
  assert(x.size() == y.size());
  std::vector<Pixel> points;
  for (std::size_t i = 0; i < x.size(); ++i) points.push_back(panel.at(x[i], y[i]));
  const LineStyle line{style.colour, style.width, style.dash};
  std::vector<Pixel> run;
  for (std::size_t i = 1; i < points.size(); ++i) {
    const bool known = points[i - 1].allFinite() && points[i].allFinite();
    const auto piece =
        known ? piece_between(points[i - 1], points[i], panel.area.bottom, panel.area.top) : std::nullopt;
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
    if (points[i].allFinite() && points[i].y() >= panel.area.bottom && points[i].y() <= panel.area.top)
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
