#include "viz/drawing/sheet.h"
#include "viz/drawing/ticks.h"
#include "viz/drawing/window.h"
#include "viz/study/row_sheet.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace gapstrain::viz {

namespace {

constexpr std::size_t most_bars = 20;

constexpr double values_room = 0.12;  // share of the axis on either side for the numbers beside the bars

CurveStyle swing_style(bool at_high) { return {.colour = curve_colours[at_high ? 1 : 0], .hollow = !at_high}; }

void draw_swing(Canvas& canvas, const RowSheet& sheet, double middle, double base, const Swing& swing) {
  const double half = std::min(0.36 * sheet.row(), 30.0);
  // Two bars to the same side would hide each other, so each takes half of the row then.
  const bool same_side = (swing.at_low > base) == (swing.at_high > base);
  const double from = sheet.panel.at(base, 0.0).x();
  const auto bar = [&](double value, bool at_high) {
    const double to = sheet.panel.at(value, 0.0).x();
    if (!std::isfinite(to)) return;
    const double bottom = same_side && !at_high ? middle : middle - half;
    const double top = same_side && at_high ? middle : middle + half;
    draw_bar(canvas, {from, bottom, to, top}, swing_style(at_high));
    draw_value(canvas, {to, 0.5 * (bottom + top)}, number_text(value), value > base || (value == base && at_high));
  };
  bar(swing.at_low, false);
  bar(swing.at_high, true);
}

}  // namespace

void draw_swings(const Display& display, const SwingChart& chart, const std::filesystem::path& file) {
  Range range{chart.outcome.logarithmic};
  std::vector<Swing> swings;
  for (const auto& swing : chart.swings)
    if (range.takes(swing.at_low) && range.takes(swing.at_high)) swings.push_back(swing);
  const std::size_t left_out = chart.swings.size() - swings.size();
  std::stable_sort(swings.begin(), swings.end(), [](const Swing& a, const Swing& b) {
    return std::abs(a.at_high - a.at_low) > std::abs(b.at_high - b.at_low);
  });
  const std::size_t all = swings.size();
  swings.resize(std::min(all, most_bars));
  std::vector<std::string> names;
  range.add(chart.base);
  for (const auto& swing : swings) {
    range.add(swing.at_low);
    range.add(swing.at_high);
    names.push_back(swing.name);
  }
  const RowSheet sheet = row_sheet(range.axis(8, values_room), swings.size(), 76.0);

  Window window(display, sheet.height);
  window.draw([&](Canvas& canvas) {
    draw_head(canvas, sheet.height, chart.words.title,
              with_remarks(chart.words.subtitle,
                           {first_of(swings.size(), all, "factors"), left_out_remark(left_out, "factor")}));
    draw_rows(canvas, sheet, chart.outcome.name, names);
    for (std::size_t r = 0; r < swings.size(); ++r)
      draw_swing(canvas, sheet, sheet.middle(r), chart.base, swings[r]);
    const Rect& area = sheet.panel.area;
    const double x = sheet.panel.at(chart.base, 0.0).x();
    if (std::isfinite(x)) canvas.line({x, area.bottom}, {x, area.top}, {.colour = ink::text, .width = 4.0});
    if (swings.empty()) draw_nothing(canvas, area);
    std::vector<LegendEntry> legend{{"factor at its low level", swing_style(false), Sample::bar},
                                    {"factor at its high level", swing_style(true), Sample::bar}};
    if (std::isfinite(x))
      legend.push_back({"line: " + chart.base_name + ", " + number_text(chart.base), {}, Sample::none});
    draw_row_legend(canvas, sheet, legend);
    draw_caution(canvas);
  });
  window.write(file);
}

void draw_bars(const Display& display, const BarChart& chart, const std::filesystem::path& file) {
  const std::size_t series = chart.series.size();
  if (series == 0 || series > curve_colours.size())
    throw std::invalid_argument("a chart of bars has one to four series");
  const std::size_t shown = std::min(chart.rows.size(), most_bars);
  Range range{chart.value.logarithmic};
  if (!range.logarithmic) range.add(0.0);
  std::vector<std::string> names;
  std::size_t left_out = 0;
  bool nothing = true;
  for (std::size_t r = 0; r < shown; ++r) {
    const auto& row = chart.rows[r];
    check_same_length(row.bars.size(), series, "bars of " + row.name + " and series");
    names.push_back(row.name);
    for (const auto& [value, low, high] : row.bars) {
      left_out += range.takes(value) ? 0 : 1;
      nothing = nothing && !range.takes(value);
      for (const double each : {value, low, high}) range.add(each);
    }
  }
  const RowSheet sheet = row_sheet(range.axis(8, range.low < 0.0 ? values_room : 0.0), shown,
                                   26.0 + 34.0 * static_cast<double>(series));
  std::vector<LegendEntry> legend;
  for (std::size_t s = 0; s < series; ++s) {
    CurveStyle style = series_style(s, 1);
    style.hollow = s % 2 == 1;  // apart in black and white, too
    legend.push_back({chart.series[s], style, Sample::bar});
  }

  Window window(display, sheet.height);
  window.draw([&](Canvas& canvas) {
    draw_head(canvas, sheet.height, chart.words.title,
              with_remarks(chart.words.subtitle,
                           {first_of(shown, chart.rows.size(), "rows"), left_out_remark(left_out, "bar")}));
    draw_rows(canvas, sheet, chart.value.name, names);
    const Panel& panel = sheet.panel;
    const double base = panel.x.logarithmic ? panel.area.left : panel.at(0.0, 0.0).x();
    const double thick = 0.84 * sheet.row() / static_cast<double>(series);
    for (std::size_t r = 0; r < shown; ++r)
      for (std::size_t s = 0; s < series; ++s) {
        const auto& [value, low, high] = chart.rows[r].bars[s];
        const double y =
            sheet.middle(r) + thick * (0.5 * (static_cast<double>(series) - 1.0) - static_cast<double>(s));
        const double end = panel.at(value, 0.0).x();
        if (!std::isfinite(end)) continue;
        draw_bar(canvas, {base, y - 0.42 * thick, end, y + 0.42 * thick}, legend[s].style);
        const Pixel from(panel.at(low, 0.0).x(), y), to(panel.at(high, 0.0).x(), y);
        draw_interval(canvas, from, to, std::min(0.25 * thick, 10.0));
        const double beyond = from.allFinite() && to.allFinite() ? (value < 0.0 ? from.x() : to.x()) : end;
        draw_value(canvas, {beyond, y}, number_text(value), value >= 0.0);
      }
    if (!panel.x.logarithmic) canvas.line({base, panel.area.bottom}, {base, panel.area.top}, {.width = 4.0});
    if (nothing) draw_nothing(canvas, panel.area);
    draw_row_legend(canvas, sheet, legend);
    draw_caution(canvas);
  });
  window.write(file);
}

}  // namespace gapstrain::viz
