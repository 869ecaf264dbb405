#include "viz/chart.h"
#include "viz/pictures.h"
#include "viz/sheet.h"
#include "viz/ticks.h"
#include "viz/window.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace gapstrain::viz {

namespace {

constexpr std::size_t most_loads = curve_colours.size();
constexpr std::array<Marker, most_loads> load_markers{Marker::circle, Marker::square, Marker::triangle,
                                                      Marker::diamond};
constexpr double most_strain = 150.0;  // %; beyond it no tissue lives, and the windows would shrink to lines
constexpr double legend_row = 50.0;

// A healing window: magnitudes of axial strain in % between `from` and `to`.
// Limits 2, 10 and 100 %: Perren & Cordey 1980, as quoted in open surgical texts.
struct HealingWindow {
  double from, to;
  const char* meaning;
  const char* limit;
  Colour tint;  // the darker, the better for bone: an order that survives a black-and-white print
};
constexpr std::array<HealingWindow, 3> windows{{{0.0, 2.0, "bone may form", "up to 2 %", {0.78, 0.86, 0.92}},
                                                {2.0, 10.0, "cartilage", "up to 10 %", {0.88, 0.93, 0.96}},
                                                {10.0, 100.0, "granulation", "up to 100 %", {0.95, 0.97, 0.98}}}};

struct LoadCurves {
  std::vector<double> around, axial, shear;  // degrees, %, %
};

// The edge as a closed curve over 0 to 360 degrees: its last point comes again before its first, and the first
// after its last.
LoadCurves curves_of(const models::GapFindings& gap) {
  LoadCurves curves;
  const auto add = [&](const models::GapPoint& point, double turn) {
    curves.around.push_back(point.around.value() * 180.0 / std::numbers::pi + turn);
    curves.axial.push_back(100.0 * point.axial_strain);
    curves.shear.push_back(100.0 * point.shear_strain);
  };
  if (gap.edge.empty()) return curves;
  // The neighbours from across the seam are cut to the chart's ends.
  const auto cut_at = [&](double angle, const models::GapPoint& before, const models::GapPoint& after) {
    constexpr double full = 2.0 * std::numbers::pi;
    const double start = before.around.value() - full, span = after.around.value() - start;
    const double part = span > 0.0 ? -start / span : 0.0;
    const auto mix = [&](double a, double b) { return 100.0 * (a + part * (b - a)); };
    curves.around.push_back(angle);
    curves.axial.push_back(mix(before.axial_strain, after.axial_strain));
    curves.shear.push_back(mix(before.shear_strain, after.shear_strain));
  };
  cut_at(0.0, gap.edge.back(), gap.edge.front());
  for (const auto& point : gap.edge) add(point, 0.0);
  cut_at(360.0, gap.edge.back(), gap.edge.front());
  return curves;
}

Axis strain_axis(const std::vector<LoadCurves>& loads) {
  // At least the first window shows whole, however small the strains.
  double low = -windows[0].to, high = windows[0].to;
  for (const auto& load : loads)
    for (const auto* values : {&load.axial, &load.shear})
      for (const double value : *values) {
        low = std::min(low, value);
        high = std::max(high, value);
      }
  const double room = 0.06 * (high - low);
  if (low < -windows[0].to) low = std::max(low - room, -most_strain);
  if (high > windows[0].to) high = std::min(high + room, most_strain);
  Axis axis = round_axis(low, high, 8);
  axis.low = low;  // ticks stay round; the panel need not end on one
  axis.high = high;
  return axis;
}

void draw_windows(Canvas& canvas, const Panel& panel) {
  std::vector<double> middles;
  std::vector<const HealingWindow*> shown;
  for (const auto& window : windows) {
    double widest = 0.0, middle = 0.0;
    for (const double sign : {-1.0, 1.0}) {
      const double from = window.from == 0.0 ? -window.to : sign > 0 ? window.from : -window.to;
      const double to = window.from == 0.0 ? window.to : sign > 0 ? window.to : -window.from;
      const double low = std::max(from, panel.y.low), high = std::min(to, panel.y.high);
      if (high <= low) continue;
      canvas.fill({panel.area.left, panel.at(0.0, low).y(), panel.area.right, panel.at(0.0, high).y()},
                  window.tint);
      if (high - low >= widest) {
        widest = high - low;
        middle = panel.at(0.0, 0.5 * (low + high)).y();
      }
    }
    if (widest == 0.0) continue;
    shown.push_back(&window);
    middles.push_back(middle);
  }
  constexpr double text_height = 80.0;
  const auto places = spread(middles, text_height + 14.0, panel.area.bottom + 0.5 * text_height,
                             panel.area.top - 0.5 * text_height - 24.0);
  for (std::size_t w = 0; w < shown.size(); ++w) {
    const double x = panel.area.right + 54.0;
    canvas.line({panel.area.right + 8.0, middles[w]}, {x - 10.0, places[w]},
                {.colour = ink::leader, .width = 3.0});
    canvas.text({x, places[w] + 18.0}, shown[w]->meaning, {.upright = Upright::centre});
    canvas.text({x, places[w] - 20.0}, shown[w]->limit,
                {.size = letter::small, .colour = ink::quiet_text, .upright = Upright::centre});
  }
}

void draw_places_round(Canvas& canvas, const Panel& panel) {
  constexpr std::array<const char*, 5> words{"near cortex", "+y side", "far cortex", "\u2212y side",
                                             "near cortex"};
  for (std::size_t k = 0; k < words.size(); ++k) {
    const double angle = 90.0 * static_cast<double>(k), x = panel.at(angle, 0.0).x();
    canvas.text({x, panel.area.bottom - 14.0}, fmt::format("{:.0f}°", angle),
                {.size = letter::small, .across = Across::centre, .upright = Upright::top});
    canvas.text({x, panel.area.bottom - 52.0}, words[k], {.across = Across::centre, .upright = Upright::top});
  }
}

CurveStyle axial_style(std::size_t load, std::size_t points) {
  const std::size_t apart = std::max<std::size_t>(points / 12, 1);
  return {curve_colours[load], Dash::solid, load_markers[load], false, 5.0, (load * apart) / most_loads, apart};
}

CurveStyle shear_style(std::size_t load, std::size_t points) {
  CurveStyle style = axial_style(load, points);
  style.dash = Dash::dashed;
  style.hollow = true;
  style.width = 4.0;
  style.first_marker += style.markers_apart / 2;
  return style;
}

std::string percent(double share) { return tick_text(100.0 * share, 0.01); }

// One row a load: name, sample of both curves with their extremes.
void draw_legend(Canvas& canvas, double top, const models::Findings& findings, std::size_t count) {
  for (std::size_t l = 0; l < count; ++l) {
    const auto& load = findings.loads[l];
    const double y = top - legend_row * (static_cast<double>(l) + 0.5);
    const TextStyle style{.upright = Upright::centre};
    TextStyle name_style = style;
    while (name_style.size > 18 && canvas.text_size(load.load, name_style).x() > 640.0) name_style.size -= 2;
    canvas.text({sheet::margin, y}, load.load, name_style);
    draw_sample(canvas, {740.0, y}, 110.0, axial_style(l, 1));
    canvas.text(
        {866.0, y},
        fmt::format("axial {} to {} %", percent(load.gap.axial_strain.min), percent(load.gap.axial_strain.max)),
        style);
    draw_sample(canvas, {1370.0, y}, 110.0, shear_style(l, 1));
    canvas.text({1496.0, y}, fmt::format("shear up to {} %", percent(load.gap.shear_strain.max)), style);
  }
}

std::string subtitle(const models::Findings& findings, std::size_t count) {
  std::string text = "Strain of the gap round the fracture edge; negative axial strain closes it";
  if (findings.loads.size() > count)
    text = fmt::format("{}. First {} of {} loads", text, count, findings.loads.size());
  if (std::any_of(findings.loads.begin(), findings.loads.end(), [](const auto& l) { return l.gap.closes; }))
    text += ". A gap would close: its strains do not hold";
  return text;
}

}  // namespace

void draw_gap_strain(const Display&, const models::Findings& findings, const std::filesystem::path& png) {
  const std::size_t count = std::min(findings.loads.size(), most_loads);
  std::vector<LoadCurves> loads;
  for (std::size_t l = 0; l < count; ++l) loads.push_back(curves_of(findings.loads[l].gap));

  const double legend_top = sheet::caution_height + 20.0 + legend_row * static_cast<double>(count);
  constexpr int height = 1330;
  Panel panel;
  panel.area = {150.0, legend_top + 140.0, 1650.0, height - sheet::head_height - 60.0};
  panel.x = {0.0, 360.0, 45.0};
  panel.y = strain_axis(loads);

  Window window(picture_width, height);
  window.draw([&](Canvas& canvas) {
    draw_head(canvas, height, findings.construct, subtitle(findings, count));
    draw_windows(canvas, panel);
    draw_panel(canvas, panel, "strain, % of the gap");
    canvas.text({picture_width - sheet::margin, panel.area.top + 12.0}, "Windows: Perren",
                {.size = letter::small, .colour = ink::quiet_text, .across = Across::right});
    draw_places_round(canvas, panel);
    for (std::size_t l = 0; l < count; ++l) {
      const std::size_t points = loads[l].around.size();
      draw_curve(canvas, panel, loads[l].around, loads[l].shear, shear_style(l, points));
      draw_curve(canvas, panel, loads[l].around, loads[l].axial, axial_style(l, points));
    }
    draw_legend(canvas, legend_top, findings, count);
    draw_caution(canvas);
  });
  window.write(png);
}

}  // namespace gapstrain::viz
