#include "viz/pictures.h"
#include "viz/round_bone.h"
#include "viz/sheet.h"
#include "viz/text_fit.h"
#include "viz/ticks.h"
#include "viz/window.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

namespace gapstrain::viz {

namespace {

constexpr double most_strain = 150.0;  // %; beyond it no tissue lives, and the windows would shrink to lines
constexpr double legend_row = 50.0;
constexpr double closed_row = 40.0;

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
  RoundCurve axial, shear;  // %
  std::size_t places = 0;
  bool closed_somewhere() const { return !axial.missing.empty(); }
};

LoadCurves curves_of(const models::GapFindings& gap) {
  constexpr double nothing = std::numeric_limits<double>::quiet_NaN();
  std::vector<double> around, axial, shear;
  for (const auto& point : gap.edge) {
    around.push_back(point.around.value() * 180.0 / std::numbers::pi);
    axial.push_back(100.0 * point.axial_strain.value_or(nothing));
    shear.push_back(100.0 * point.shear_strain.value_or(nothing));
  }
  return {round_curve(around, axial), round_curve(around, shear), around.size()};
}

Axis strain_axis(const std::vector<LoadCurves>& loads) {
  // At least the first window shows whole, however small the strains.
  double low = -windows[0].to, high = windows[0].to;
  for (const auto& load : loads)
    for (const auto* curve : {&load.axial, &load.shear})
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

// Under the panel a row for each load that closes the fracture somewhere: grey where it does.
double draw_closed(Canvas& canvas, const Panel& panel, const std::vector<LoadCurves>& loads) {
  double top = panel.area.bottom - 8.0;
  for (std::size_t l = 0; l < loads.size(); ++l) {
    if (!loads[l].closed_somewhere()) continue;
    const double middle = top - 0.5 * closed_row;
    for (const auto& [from, to] : loads[l].axial.missing) {
      const Rect band{panel.at(from, 0.0).x(), top - closed_row + 4.0, panel.at(to, 0.0).x(), top};
      canvas.fill(band, ink::grid);
      const TextStyle style{.size = letter::small, .across = Across::centre, .upright = Upright::centre};
      if (canvas.text_size("closed", style).x() < band.width()) canvas.text(band.centre(), "closed", style);
    }
    canvas.marker({panel.area.left - 30.0, middle}, load_style(l, 1).marker, 11.0, load_style(l, 1).colour, false);
    top -= closed_row;
  }
  return panel.area.bottom - top;
}

CurveStyle shear_style(std::size_t load, std::size_t points) {
  CurveStyle style = load_style(load, points);
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
    canvas.text({sheet::margin, y}, load.load, fitted(canvas, load.load, style, 640.0));
    const auto& axial = load.gap.axial_strain;
    const auto& shear = load.gap.shear_strain;
    draw_sample(canvas, {740.0, y}, 110.0, load_style(l, 1));
    if (!axial || !shear) {
      canvas.text({866.0, y}, "closed all round: no strain", style);
      continue;
    }
    canvas.text({866.0, y}, fmt::format("axial {} to {} %", percent(axial->min), percent(axial->max)), style);
    draw_sample(canvas, {1370.0, y}, 110.0, shear_style(l, 1));
    canvas.text({1496.0, y}, fmt::format("shear up to {} %", percent(shear->max)), style);
  }
}

std::string subtitle(const models::Findings& findings, const std::vector<LoadCurves>& loads) {
  const std::size_t count = loads.size();
  std::string text = "Strain of the gap round the fracture edge; negative axial strain closes it";
  if (findings.loads.size() > count)
    text = fmt::format("{}. First {} of {} loads", text, count, findings.loads.size());
  if (std::any_of(loads.begin(), loads.end(), [](const auto& l) { return l.closed_somewhere(); }))
    text += ". None where the faces touch";
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
  const auto rows = std::count_if(loads.begin(), loads.end(), [](const auto& l) { return l.closed_somewhere(); });
  panel.area = {150.0, legend_top + 140.0 + closed_row * static_cast<double>(rows), 1650.0,
                height - sheet::head_height - 60.0};
  panel.x = round_bone_axis();
  panel.y = strain_axis(loads);

  const bool closed =
      count > 0 && std::all_of(loads.begin(), loads.end(), [](const auto& l) { return l.axial.pieces.empty(); });

  Window window(picture_width, height);
  window.draw([&](Canvas& canvas) {
    draw_head(canvas, height, findings.construct, subtitle(findings, loads));
    if (!closed) draw_windows(canvas, panel);
    draw_panel(canvas, panel, "strain, % of the gap");
    if (!closed)
      canvas.text({picture_width - sheet::margin, panel.area.top + 12.0}, "Windows: Perren",
                  {.size = letter::small, .colour = ink::quiet_text, .across = Across::right});
    draw_places_round(canvas, panel, 14.0 + draw_closed(canvas, panel, loads));
    for (std::size_t l = 0; l < count; ++l) {
      loads[l].shear.draw(canvas, panel, shear_style(l, loads[l].places));
      loads[l].axial.draw(canvas, panel, load_style(l, loads[l].places));
    }
    if (closed)
      canvas.text(panel.area.centre() + Pixel(0.0, 60.0),
                  "The fracture is closed all round: change over gap has no meaning. See its pressure.",
                  {.across = Across::centre, .upright = Upright::centre, .bold = true});
    draw_legend(canvas, legend_top, findings, count);
    draw_caution(canvas);
  });
  window.write(png);
}

}  // namespace gapstrain::viz
