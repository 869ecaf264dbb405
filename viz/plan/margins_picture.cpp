#include "viz/drawing/sheet.h"
#include "viz/drawing/ticks.h"
#include "viz/drawing/window.h"
#include "viz/plan/review_pictures.h"
#include "viz/study/row_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace gapstrain::viz {

namespace {

constexpr std::size_t most_margins = 15;
constexpr double least_factor = 0.1, most_factor = 100.0;  // of the axis

double worst(const MarginRow& row) {
  double least = std::numeric_limits<double>::infinity();
  for (const double factor : row.factors)
    if (factor < least) least = factor;
  return least;
}

// Round ends with room for the numbers, both sides of 1 in view.
Axis factor_axis(const std::vector<MarginRow>& rows) {
  double low = 0.5, high = 4.0;
  for (const auto& row : rows)
    for (const double factor : row.factors) {
      if (std::isnan(factor)) continue;
      low = std::min(low, std::max(0.6 * factor, least_factor));
      high = std::max(high, std::min(1.6 * factor, most_factor));
    }
  return logarithmic_axis(low, high, 12);
}

std::string factor_text(double factor) { return std::isfinite(factor) ? number_text(factor, 3) : "unlimited"; }

void draw_factor(Canvas& canvas, const RowSheet& sheet, double middle, double half, double factor,
                 const CurveStyle& style) {
  const Axis& axis = sheet.panel.x;
  const bool fails = factor < 1.0;
  const double outward = fails ? -1.0 : 1.0;
  const double from = sheet.panel.at(1.0, 0.0).x();
  const double to = sheet.panel.at(std::clamp(factor, axis.low, axis.high), 0.0).x();
  const bool within = factor >= axis.low && factor <= axis.high;
  const double end = within ? to : to - outward * half;
  draw_bar(canvas, {from, middle - half, end, middle + half}, style);
  if (within) {
    draw_value(canvas, {to, middle}, factor_text(factor), !fails);
    return;
  }
  canvas.polygon({{end, middle + half}, {to, middle}, {end, middle - half}}, style.colour);
  draw_value(canvas, {end - outward * 4.0, middle}, factor_text(factor), fails);
}

// Over the panel, on either side of the line.
void draw_sides(Canvas& canvas, const Panel& panel) {
  const double one = panel.at(1.0, 0.0).x();
  const double y = panel.area.top + 6.0;
  canvas.text({one - 40.0, y}, "fails", {.size = letter::small, .across = Across::right, .bold = true});
  canvas.text({one, y}, "1", {.size = letter::small, .across = Across::centre, .bold = true});
  canvas.text({one + 40.0, y}, "holds", {.size = letter::small, .bold = true});
}

std::string failing(std::size_t count) {
  return count == 0 ? "" : count == 1 ? "One is below 1" : fmt::format("{} are below 1", count);
}

CurveStyle construct_style(std::size_t construct) {
  CurveStyle style = series_style(construct, 1);
  style.hollow = construct % 2 == 1;  // apart in black and white, too
  return style;
}

}  // namespace

void draw_margins(const Display& display, const MarginChart& chart, const std::filesystem::path& file) {
  const bool compared = !chart.constructs.empty();
  const std::size_t series = std::max<std::size_t>(chart.constructs.size(), 1);
  if (series > curve_colours.size()) throw std::invalid_argument("margins of at most four constructs are drawn");
  std::vector<MarginRow> rows;
  std::size_t left_out = 0, below = 0;
  for (const auto& row : chart.rows) {
    check_same_length(row.factors.size(), series, "factors of " + row.name + " and constructs");
    const auto known =
        std::count_if(row.factors.begin(), row.factors.end(), [](double f) { return !std::isnan(f); });
    left_out += series - static_cast<std::size_t>(known);
    below += static_cast<std::size_t>(
        std::count_if(row.factors.begin(), row.factors.end(), [](double f) { return f < 1.0; }));
    if (known > 0) rows.push_back(row);
  }
  const std::size_t all = rows.size();
  std::stable_sort(rows.begin(), rows.end(),
                   [](const MarginRow& a, const MarginRow& b) { return worst(a) < worst(b); });
  rows.resize(std::min(all, most_margins));
  std::vector<std::string> names;
  for (const auto& row : rows) names.push_back(row.name);

  const RowSheet sheet =
      row_sheet(factor_axis(rows), rows.size(), compared ? 30.0 + 34.0 * static_cast<double>(series) : 84.0);
  std::vector<LegendEntry> legend;
  for (std::size_t c = 0; c < chart.constructs.size(); ++c)
    legend.push_back({chart.constructs[c], construct_style(c), Sample::bar});
  if (!compared) {
    legend.push_back({"holds: 1 or more", style_of(Meaning::holds), Sample::bar});
    if (below > 0) legend.push_back({"fails: below 1", style_of(Meaning::fails), Sample::bar});
    if (std::any_of(rows.begin(), rows.end(), [](const MarginRow& row) { return row.indicative; }))
      legend.push_back({"hollow: indicative only", {.colour = ink::text, .hollow = true}, Sample::bar});
  }

  Window window(display, sheet.height);
  window.draw([&](Canvas& canvas) {
    const std::string rest =
        all > rows.size() ? fmt::format("Worst {} of {}", rows.size(), all) : std::string("Worst first");
    draw_head(canvas, sheet.height, chart.title,
              with_remarks(chart.subtitle, {rest, failing(below), left_out_remark(left_out, "margin")}));
    draw_rows(canvas, sheet, "strength / demand", names);
    const double slot = 0.8 * sheet.row() / static_cast<double>(series), half = std::min(0.42 * slot, 24.0);
    for (std::size_t r = 0; r < rows.size(); ++r)
      for (std::size_t c = 0; c < series; ++c) {
        const double factor = rows[r].factors[c];
        if (std::isnan(factor)) continue;
        CurveStyle style =
            compared ? construct_style(c) : style_of(factor < 1.0 ? Meaning::fails : Meaning::holds);
        if (!compared) style.hollow = rows[r].indicative;
        const double offset = slot * (0.5 * static_cast<double>(series - 1) - static_cast<double>(c));
        draw_factor(canvas, sheet, sheet.middle(r) + offset, half, factor, style);
      }
    const Rect& area = sheet.panel.area;
    const double one = sheet.panel.at(1.0, 0.0).x();
    canvas.line({one, area.bottom}, {one, area.top}, {.width = 5.0});
    draw_sides(canvas, sheet.panel);
    if (rows.empty()) draw_nothing(canvas, area);
    draw_row_legend(canvas, sheet, legend);
    draw_caution(canvas);
  });
  window.write(file);
}

}  // namespace gapstrain::viz
