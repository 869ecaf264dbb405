#include "viz/drawing/sheet.h"
#include "viz/drawing/ticks.h"
#include "viz/drawing/window.h"
#include "viz/study/study_limits.h"
#include "viz/study/study_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace gapstrain::viz {

namespace {

constexpr std::size_t most_panels = 3;
constexpr double between_panels = 80.0;  // panels, with room for a name

// Behind the curves, in pieces where both of its edges are known.
void draw_band(Canvas& canvas, const Panel& panel, const StudyCurve& curve, Colour colour) {
  colour.opacity = 0.18;
  std::vector<Pixel> lower, upper;
  const auto draw_piece = [&] {
    lower.insert(lower.end(), upper.rbegin(), upper.rend());
    if (upper.size() > 1) canvas.polygon(lower, colour);
    lower.clear();
    upper.clear();
  };
  const auto within = [&](Pixel place) {
    place.y() = std::clamp(place.y(), panel.area.bottom, panel.area.top);
    return place;
  };
  for (std::size_t i = 0; i < curve.low.size(); ++i) {
    const Pixel low = panel.at(curve.x[i], curve.low[i]), high = panel.at(curve.x[i], curve.high[i]);
    if (!low.allFinite() || !high.allFinite()) {
      draw_piece();
      continue;
    }
    lower.push_back(within(low));
    upper.push_back(within(high));
  }
  draw_piece();
}

// Ten decades would flatten the crossing of what decides, so the axis ends three below and two above it.
Axis decisive_part(Axis axis, double decisive) {
  constexpr double below = 1e-3, above = 1e2;
  Axis cut = axis;
  cut.low = std::max(axis.low, below * decisive);
  cut.high = std::min(axis.high, above * decisive);
  if (!(cut.high > cut.low)) return {below * decisive, above * decisive, 1.0, true};
  if (cut.low > axis.low || cut.high < axis.high) cut.step = 1.0;
  return cut;
}

// Where the curve's name belongs: its last value.
double last_value(const StudyCurve& curve, const Axis& y) {
  for (auto value = curve.y.rbegin(); value != curve.y.rend(); ++value)
    if (std::isfinite(y.share(*value))) return *value;
  return y.low;
}

struct PanelSheet {
  const CurvePanel* content = nullptr;
  std::size_t shown = 0;
  bool nothing = true;
  Axis y;
  std::vector<SideName> names;

  CurveStyle style(std::size_t curve) const { return series_style(curve, content->curves[curve].x.size()); }
};

void draw_content(Canvas& canvas, const Panel& panel, const PanelSheet& sheet) {
  draw_limit_bands(canvas, panel, sheet.content->limits, Direction::level);
  draw_panel(canvas, panel, sheet.content->y.name);
  for (std::size_t c = 0; c < sheet.shown; ++c)
    draw_band(canvas, panel, sheet.content->curves[c], sheet.style(c).colour);
  draw_limit_lines(canvas, panel, sheet.content->limits, Direction::level);
  for (std::size_t c = 0; c < sheet.shown; ++c)
    draw_curve(canvas, panel, sheet.content->curves[c].x, sheet.content->curves[c].y, sheet.style(c));
  draw_side_names(canvas, panel, sheet.names);
  if (sheet.nothing) draw_nothing(canvas, panel.area);
}

}  // namespace

void draw_curves(const Display& display, const CurveChart& chart, const std::filesystem::path& file) {
  if (chart.panels.empty() || chart.panels.size() > most_panels)
    throw std::invalid_argument("a chart of curves has one to three panels");
  Range x{chart.x.logarithmic};
  std::vector<PanelSheet> sheets;
  std::size_t left_out = 0, most_curves = 0;
  std::string cut;
  for (const auto& content : chart.panels) {
    PanelSheet own{
        .content = &content, .shown = std::min(content.curves.size(), most_series), .y = {}, .names = {}};
    most_curves = std::max(most_curves, content.curves.size());
    Range y{content.y.logarithmic};
    for (std::size_t c = 0; c < own.shown; ++c) {
      const auto& curve = content.curves[c];
      check_same_length(curve.x.size(), curve.y.size(), "x and y of " + curve.name);
      check_same_length(curve.low.size(), curve.high.size(), "low and high of " + curve.name);
      if (!curve.low.empty()) check_same_length(curve.x.size(), curve.low.size(), "x and low of " + curve.name);
      for (std::size_t i = 0; i < curve.x.size(); ++i) {
        if (!x.takes(curve.x[i]) || !y.takes(curve.y[i])) ++left_out;
        x.add(curve.x[i]);
        y.add(curve.y[i]);
      }
      y.add(curve.low);
      y.add(curve.high);
    }
    own.nothing = y.empty || x.empty;
    y.add_limits(content.limits);
    const Axis whole = y.axis(chart.panels.size() == 1 ? 8 : 5, 0.03);
    own.y = content.y.decisive && whole.logarithmic ? decisive_part(whole, *content.y.decisive) : whole;
    if (own.y.low > whole.low || own.y.high < whole.high)
      cut = fmt::format("Logarithmic axis cut off at {} and {}", number_text(own.y.low), number_text(own.y.high));
    for (std::size_t c = 0; c < own.shown; ++c)
      own.names.push_back({last_value(content.curves[c], own.y), content.curves[c].name, own.style(c)});
    for (auto& name : limit_names(content.limits, own.y)) own.names.push_back(std::move(name));
    sheets.push_back(std::move(own));
  }

  const int height = study::height + (chart.panels.size() == most_panels ? 220 : 0);
  Window window(display, height);
  window.draw([&](Canvas& canvas) {
    draw_head(
        canvas, height, chart.words.title,
        with_remarks(chart.words.subtitle, {first_of(std::min(most_curves, most_series), most_curves, "curves"),
                                            left_out_remark(left_out, "point"), cut}));
    double left = 0.0, names_room = 100.0;
    for (const auto& own : sheets) {
      left = std::max(left, numbers_room(canvas, own.y));
      names_room = std::max(names_room, side_room(canvas, own.names));
    }
    const double bottom = sheet::caution_height + study::under_panel;
    const auto count = static_cast<double>(sheets.size());
    const double each = (height - sheet::head_height - 60.0 - bottom - between_panels * (count - 1.0)) / count;
    double top = height - sheet::head_height - 60.0;
    for (std::size_t p = 0; p < sheets.size(); ++p, top -= each + between_panels) {
      Panel panel{{left, top - each, picture_width - names_room, top}, x.axis(10), sheets[p].y};
      draw_content(canvas, panel, sheets[p]);
      if (p + 1 == sheets.size()) draw_x_numbers(canvas, panel, chart.x.name);
    }
    draw_caution(canvas);
  });
  window.write(file);
}

}  // namespace gapstrain::viz
