#include "viz/fracture/healing_windows.h"

#include "viz/drawing/sheet.h"
#include "viz/drawing/window.h"

#include <algorithm>
#include <array>
#include <limits>
#include <numbers>
#include <optional>

namespace gapstrain::viz {

namespace {

constexpr double most_strain = 150.0;  // %; beyond it no tissue lives, and the windows would shrink to lines
// A healing window: magnitudes of axial strain in % between `from` and `to`.
// Limits 2, 10 and 100 %: Perren & Cordey 1980, as quoted in open surgical texts.
struct HealingWindow {
  double from = 0.0, to = 0.0;
  const char* meaning = nullptr;
  const char* limit = nullptr;
  Colour tint;  // the darker, the better for bone: an order that survives a black-and-white print
};
constexpr std::array<HealingWindow, 3> windows{{{0.0, 2.0, "bone may form", "up to 2 %", {0.78, 0.86, 0.92}},
                                                {2.0, 10.0, "cartilage", "up to 10 %", {0.88, 0.93, 0.96}},
                                                {10.0, 100.0, "granulation", "up to 100 %", {0.95, 0.97, 0.98}}}};

using Strain = std::optional<double> models::GapPoint::*;

RoundCurve strain_curve(const models::GapFindings& gap, Strain strain) {
  std::vector<double> around, percent;
  for (const auto& point : gap.edge) {
    around.push_back(point.around.value() * 180.0 / std::numbers::pi);
    percent.push_back(100.0 * (point.*strain).value_or(std::numeric_limits<double>::quiet_NaN()));
  }
  return round_curve(around, percent);
}

}  // namespace

RoundCurve axial_strain_curve(const models::GapFindings& gap) {
  return strain_curve(gap, &models::GapPoint::axial_strain);
}

RoundCurve shear_strain_curve(const models::GapFindings& gap) {
  return strain_curve(gap, &models::GapPoint::shear_strain);
}

Axis strain_axis(const std::vector<const RoundCurve*>& curves) {
  // At least the first window shows whole, however small the strains.
  double low = -windows[0].to, high = windows[0].to;
  for (const auto* curve : curves)
    for (const auto& piece : curve->pieces)
      for (const double value : piece.values) {
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

void draw_healing_windows(Canvas& canvas, const Panel& panel) {
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
  canvas.text({picture_width - sheet::margin, panel.area.top + 12.0}, "Windows: Perren",
              {.size = letter::small, .colour = ink::quiet_text, .across = Across::right});
}

}  // namespace gapstrain::viz
