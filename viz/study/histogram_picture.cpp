#include "viz/drawing/sheet.h"
#include "viz/drawing/ticks.h"
#include "viz/drawing/window.h"
#include "viz/study/study_limits.h"
#include "viz/study/study_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::viz {

namespace {

constexpr int most_classes = 60;
constexpr double head_room = 1.35;  // of the panel over the largest class, for the names of marks

struct Classes {
  double first = 0.0, width = 1.0;  // on a logarithmic axis of the common logarithm
  std::vector<std::size_t> counts;
};

// Width of round numbers near twice the range between quartiles over the cube root of the number.
Classes classes_of(std::vector<double> values) {
  Classes classes;
  if (values.empty()) return classes;
  std::sort(values.begin(), values.end());
  const double span = values.back() - values.front();
  const std::size_t count = values.size();
  const double between_quartiles = values[(3 * (count - 1)) / 4] - values[(count - 1) / 4];
  const double rule = 2.0 * between_quartiles / std::cbrt(static_cast<double>(count));
  const bool equal = !(span > 1e-9 * std::max(std::abs(values.front()), std::abs(values.back())));
  if (equal) {
    classes.width = values.front() == 0.0 ? 1.0 : round_below(0.1 * std::abs(values.front()));
    classes.first = values.front() - 1.5 * classes.width;  // an empty class on either side
    classes.counts.assign(3, 0);
  } else {
    classes.width = round_step(std::max({rule, span / most_classes, 1e-12 * span}), 1);
    // Rules for smooth distributions leave few values with a class or two.
    constexpr double fewest_classes = 6.0;
    if (classes.width > span / fewest_classes) classes.width = round_below(span / fewest_classes);
    classes.first = classes.width * std::floor(values.front() / classes.width + 1e-9);
  }
  for (const double value : values) {
    const auto k =
        static_cast<std::size_t>(std::max(0.0, std::floor((value - classes.first) / classes.width + 1e-9)));
    if (k >= classes.counts.size()) classes.counts.resize(k + 1, 0);
    ++classes.counts[k];
  }
  return classes;
}

}  // namespace

void draw_histogram(const Display& display, const HistogramChart& chart, const std::filesystem::path& file) {
  Range x{chart.value.logarithmic};
  std::vector<double> placed;
  for (const double value : chart.values)
    if (x.takes(value)) placed.push_back(x.logarithmic ? std::log10(value) : value);
  const Classes classes = classes_of(placed);
  const auto edge = [&](std::size_t k) {
    const double place = classes.first + classes.width * static_cast<double>(k);
    return x.logarithmic ? std::pow(10.0, place) : place;
  };
  const auto percent = [&](std::size_t k) {
    return 100.0 * static_cast<double>(classes.counts[k]) / static_cast<double>(placed.size());
  };
  double highest = 0.0;
  if (!placed.empty()) {
    x.add(edge(0));
    x.add(edge(classes.counts.size()));
  }
  for (std::size_t k = 0; k < classes.counts.size(); ++k) highest = std::max(highest, percent(k));
  for (const auto& mark : chart.marked)
    if (x.takes(mark.value)) x.add(mark.value);
  x.add_limits(chart.limits);

  Window window(display, study::height);
  window.draw([&](Canvas& canvas) {
    draw_head(
        canvas, study::height, chart.words.title,
        with_remarks(chart.words.subtitle, {left_out_remark(chart.values.size() - placed.size(), "outcome")}));
    Panel panel;
    panel.x = x.tight_axis(10);
    panel.y = placed.empty() ? Axis{0.0, 1.0, 0.5} : round_axis(0.0, highest, 6);
    panel.y.high = std::max(panel.y.high, head_room * highest);
    panel.area = {numbers_room(canvas, panel.y), sheet::caution_height + study::under_panel, picture_width - 100.0,
                  study::height - sheet::head_height - 60.0};
    draw_limit_bands(canvas, panel, chart.limits, Direction::upright);
    draw_panel(canvas, panel, fmt::format("share of the {} values, %", placed.size()));
    draw_x_numbers(canvas, panel, chart.value.name);
    for (std::size_t k = 0; k < classes.counts.size(); ++k) {
      if (classes.counts[k] == 0) continue;
      const Pixel low = panel.at(edge(k), 0.0), high = panel.at(edge(k + 1), percent(k));
      const double apart = high.x() - low.x() > 6.0 ? 1.0 : 0.0;
      canvas.fill({low.x() + apart, low.y(), high.x() - apart, high.y()}, curve_colours[0]);
    }
    draw_marked_values(canvas, panel, chart.marked, chart.limits);
    if (placed.empty()) draw_nothing(canvas, panel.area);
    draw_caution(canvas);
  });
  window.write(file);
}

}  // namespace gapstrain::viz
