#include "viz/review_pictures.h"
#include "viz/row_sheet.h"
#include "viz/sheet.h"
#include "viz/study_limits.h"
#include "viz/ticks.h"
#include "viz/window.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace gapstrain::viz {

namespace {

constexpr std::size_t most_bars = 15;
constexpr double least_factor = 0.1, most_factor = 100.0;  // of the axis
constexpr double infinity = std::numeric_limits<double>::infinity();

CurveStyle bar_style(const MarginBar& bar) {
  return {.colour = bar.factor < 1.0 ? curve_colours[1] : curve_colours[0], .hollow = bar.indicative};
}

// Round ends with room for the numbers, both sides of 1 in view.
Axis factor_axis(const std::vector<MarginBar>& bars) {
  double low = 0.5, high = 4.0;
  for (const auto& bar : bars) {
    low = std::min(low, std::max(0.6 * bar.factor, least_factor));
    high = std::max(high, std::min(1.6 * bar.factor, most_factor));
  }
  return logarithmic_axis(low, high, 12);
}

std::string factor_text(double factor) { return std::isfinite(factor) ? number_text(factor, 3) : "unlimited"; }

void draw_margin(Canvas& canvas, const RowSheet& sheet, double middle, const MarginBar& bar) {
  const Axis& axis = sheet.panel.x;
  const bool fails = bar.factor < 1.0;
  const double half = std::min(0.34 * sheet.row(), 24.0), outward = fails ? -1.0 : 1.0;
  const double from = sheet.panel.at(1.0, 0.0).x();
  const double to = sheet.panel.at(std::clamp(bar.factor, axis.low, axis.high), 0.0).x();
  const bool within = bar.factor >= axis.low && bar.factor <= axis.high;
  const double end = within ? to : to - outward * half;
  draw_bar(canvas, {from, middle - half, end, middle + half}, bar_style(bar));
  if (within) {
    draw_value(canvas, {to, middle}, factor_text(bar.factor), !fails);
    return;
  }
  canvas.polygon({{end, middle + half}, {to, middle}, {end, middle - half}}, bar_style(bar).colour);
  const std::string text = factor_text(bar.factor);
  const TextStyle style{
      .size = letter::small, .across = fails ? Across::left : Across::right, .upright = Upright::centre};
  const double width = canvas.text_size(text, style).x(), number = end - outward * 16.0;
  canvas.fill({std::min(number, number - outward * width) - 8.0, middle - 18.0,
               std::max(number, number - outward * width) + 8.0, middle + 18.0},
              ink::white);
  canvas.text({number, middle}, text, style);
}

// Over the panel, each over its band.
void draw_band_names(Canvas& canvas, const Panel& panel) {
  const double one = panel.at(1.0, 0.0).x(), two = panel.at(2.0, 0.0).x();
  const TextStyle style{.size = letter::small, .colour = ink::quiet_text, .across = Across::centre};
  canvas.text({0.5 * (panel.area.left + one), panel.area.top + 6.0}, "fails", style);
  canvas.text({0.5 * (one + two), panel.area.top + 6.0}, "below 2", style);
}

std::string failing(std::size_t count) {
  return count == 0 ? "" : count == 1 ? "One is below 1" : fmt::format("{} are below 1", count);
}

}  // namespace

void draw_margins(const Display&, const MarginChart& chart, const std::filesystem::path& png) {
  std::vector<MarginBar> bars;
  for (const auto& bar : chart.bars)
    if (!std::isnan(bar.factor)) bars.push_back(bar);
  const std::size_t left_out = chart.bars.size() - bars.size(), all = bars.size();
  std::stable_sort(bars.begin(), bars.end(),
                   [](const MarginBar& a, const MarginBar& b) { return a.factor < b.factor; });
  const auto below = static_cast<std::size_t>(
      std::count_if(bars.begin(), bars.end(), [](const MarginBar& bar) { return bar.factor < 1.0; }));
  bars.resize(std::min(all, most_bars));
  std::vector<std::string> names;
  for (const auto& bar : bars) names.push_back(bar.name);

  const RowSheet sheet = row_sheet(factor_axis(bars), bars.size(), 84.0);
  const std::vector<Limit> bands{{"fails", -infinity, 1.0}, {"below 2", 1.0, 2.0}};
  std::vector<LegendEntry> legend{{"1 or more", {.colour = curve_colours[0]}, Sample::bar}};
  if (below > 0) legend.push_back({"below 1: fails", {.colour = curve_colours[1]}, Sample::bar});
  if (std::any_of(bars.begin(), bars.end(), [](const MarginBar& bar) { return bar.indicative; }))
    legend.push_back({"hollow: indicative only", {.colour = ink::text, .hollow = true}, Sample::bar});

  Window window(picture_width, sheet.height);
  window.draw([&](Canvas& canvas) {
    const std::string rest =
        all > bars.size() ? fmt::format("Worst {} of {}", bars.size(), all) : std::string("Worst first");
    draw_head(canvas, sheet.height, chart.title,
              with_remarks(chart.subtitle, {rest, failing(below), left_out_remark(left_out, "part")}));
    draw_limit_bands(canvas, sheet.panel, bands, Direction::upright);
    draw_rows(canvas, sheet, "strength / demand", names);
    for (std::size_t b = 0; b < bars.size(); ++b) draw_margin(canvas, sheet, sheet.middle(b), bars[b]);
    const Rect& area = sheet.panel.area;
    const double one = sheet.panel.at(1.0, 0.0).x();
    canvas.line({one, area.bottom}, {one, area.top}, {.width = 5.0});
    draw_band_names(canvas, sheet.panel);
    if (bars.empty()) draw_nothing(canvas, area);
    draw_row_legend(canvas, sheet, legend);
    draw_caution(canvas);
  });
  window.write(png);
}

}  // namespace gapstrain::viz
