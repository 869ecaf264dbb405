#include "viz/drawing/sheet.h"
#include "viz/drawing/text_fit.h"
#include "viz/drawing/ticks.h"
#include "viz/drawing/window.h"
#include "viz/study/study_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::viz {

namespace {

constexpr std::size_t most_factors = 8, most_in_a_row = 4;
constexpr double between_factors = 28.0;  // panels side by side
constexpr double under_panel = 150.0;     // two lines of level, the factor's name
constexpr CurveStyle mean_style{.colour = curve_colours[0], .marker = Marker::circle};

double spread_of(const Factor& factor) {
  Range range;
  for (const auto& level : factor.levels) range.add(level.mean.value);
  return range.high - range.low;
}

void draw_factor(Canvas& canvas, const Panel& panel, const Factor& factor, bool numbers, double mean) {
  const Rect& area = panel.area;
  draw_level_grid(canvas, panel, numbers);
  canvas.frame(area, {.colour = ink::leader, .width = 2.0});
  const double y_mean = panel.at(0.0, mean).y();
  if (std::isfinite(y_mean))
    canvas.line({area.left, y_mean}, {area.right, y_mean},
                {.colour = ink::text, .width = 3.0, .dash = Dash::dashed});

  const std::size_t count = factor.levels.size();
  const double slot = area.width() / static_cast<double>(std::max<std::size_t>(count, 1));
  TextStyle level_style{.size = letter::small, .across = Across::centre};
  std::vector<double> places, means;
  for (std::size_t l = 0; l < count; ++l) {
    const auto& level = factor.levels[l];
    places.push_back(static_cast<double>(l) + 0.5);
    means.push_back(level.mean.value);
    level_style = fitted_lines(canvas, level.text, level_style, slot - 10.0, 2, 20).style;  // one size for all
  }
  for (std::size_t l = 0; l < count; ++l) {
    const auto lines = wrapped(canvas, factor.levels[l].text, level_style, slot - 10.0, 2);
    const double x = panel.at(places[l], panel.y.low).x();
    draw_lines(canvas, {x, area.bottom - 10.0 - 0.56 * level_style.size * static_cast<double>(lines.size())},
               lines, level_style);
    const auto& [value, low, high] = factor.levels[l].mean;
    draw_interval(canvas, panel.at(places[l], low), panel.at(places[l], high), 10.0);
  }
  draw_curve(canvas, panel, places, means, mean_style);
  const TextStyle name_style{.across = Across::centre, .bold = true};
  const auto [name, own] = fitted_lines(canvas, factor.name, name_style, area.width(), 1, 26);
  draw_lines(canvas, {area.centre().x(), area.bottom - 104.0}, name, own);
}

}  // namespace

void draw_effects(const Display& display, const EffectsChart& chart, const std::filesystem::path& file) {
  std::vector<Factor> factors = chart.factors;
  if (factors.size() > most_factors) {
    std::stable_sort(factors.begin(), factors.end(),
                     [](const Factor& a, const Factor& b) { return spread_of(a) > spread_of(b); });
    factors.resize(most_factors);
  }
  Range y{chart.y.logarithmic};
  std::size_t left_out = 0;
  for (const auto& factor : factors)
    for (const auto& [text, mean] : factor.levels) {
      left_out += y.takes(mean.value) ? 0 : 1;
      for (const double each : {mean.value, mean.low, mean.high}) y.add(each);
    }
  const bool nothing = y.empty;
  if (y.takes(chart.mean)) y.add(chart.mean);
  const std::size_t rows = factors.size() > most_in_a_row ? 2 : 1;
  const std::size_t columns = std::max<std::size_t>((factors.size() + rows - 1) / rows, 1);
  const int height = rows == 1 ? 1000 : 1500;

  Window window(display, height);
  window.draw([&](Canvas& canvas) {
    const std::string chosen =
        chart.factors.size() > factors.size()
            ? fmt::format("The {} of {} factors that matter most", factors.size(), chart.factors.size())
            : "";
    const std::string line = y.takes(chart.mean) ? "Dashed: mean of all, " + number_text(chart.mean) : "";
    draw_head(canvas, height, chart.words.title,
              with_remarks(chart.words.subtitle, {line, chosen, left_out_remark(left_out, "mean")}));
    Panel panel;
    panel.y = y.axis(rows == 1 ? 7 : 5);
    const double left = numbers_room(canvas, panel.y), right = picture_width - sheet::margin;
    const double width = (right - left + between_factors) / static_cast<double>(columns) - between_factors;
    const double top = height - sheet::head_height - 60.0;
    const double each = (top - sheet::caution_height) / static_cast<double>(rows) - under_panel;
    canvas.text({left, top + 12.0}, chart.y.name, fitted(canvas, chart.y.name, {.bold = true}, right - left));
    for (std::size_t f = 0; f < factors.size(); ++f) {
      const auto row = f / columns, column = f % columns;
      const double x = left + (width + between_factors) * static_cast<double>(column);
      const double panel_top = top - (each + under_panel) * static_cast<double>(row);
      panel.area = {x, panel_top - each, x + width, panel_top};
      panel.x = {0.0, static_cast<double>(std::max<std::size_t>(factors[f].levels.size(), 1)), 1.0};
      draw_factor(canvas, panel, factors[f], column == 0, chart.mean);
    }
    if (nothing) draw_nothing(canvas, {left, top - each, right, top});
    draw_caution(canvas);
  });
  window.write(file);
}

}  // namespace gapstrain::viz
