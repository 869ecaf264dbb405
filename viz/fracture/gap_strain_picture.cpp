#include "viz/construct/pictures.h"
#include "viz/drawing/sheet.h"
#include "viz/drawing/text_fit.h"
#include "viz/drawing/ticks.h"
#include "viz/drawing/window.h"
#include "viz/fracture/healing_windows.h"
#include "viz/fracture/round_bone.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::viz {

namespace {

struct LoadCurves {
  RoundCurve axial, shear;  // %
  std::size_t places = 0;
  bool closed_somewhere() const { return !axial.missing.empty(); }
};

LoadCurves curves_of(const models::GapFindings& gap) {
  return {axial_strain_curve(gap), shear_strain_curve(gap), gap.edge.size()};
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
    const double y = top - sheet::legend_row * (static_cast<double>(l) + 0.5);
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
  std::string text = "Round the fracture edge; negative axial strain closes it";
  if (findings.loads.size() > count)
    text = fmt::format("{}. First {} of {} loads", text, count, findings.loads.size());
  if (std::any_of(loads.begin(), loads.end(), [](const auto& l) { return l.closed_somewhere(); }))
    text += ". None where the faces touch";
  return text;
}

}  // namespace

void draw_gap_strain(const Display& display, const models::Findings& findings, const std::filesystem::path& file) {
  const std::size_t count = std::min(findings.loads.size(), most_loads);
  std::vector<LoadCurves> loads;
  for (std::size_t l = 0; l < count; ++l) loads.push_back(curves_of(findings.loads[l].gap));

  const double legend_top = sheet::caution_height + 20.0 + sheet::legend_row * static_cast<double>(count);
  constexpr int height = 1330;
  Panel panel;
  const auto rows = std::count_if(loads.begin(), loads.end(), [](const auto& l) { return l.closed_somewhere(); });
  panel.area = {150.0, legend_top + 140.0 + closed_row * static_cast<double>(rows), 1650.0,
                height - sheet::head_height - 60.0};
  panel.x = round_bone_axis();
  std::vector<const RoundCurve*> axial, all;
  for (const auto& load : loads) {
    axial.push_back(&load.axial);
    all.insert(all.end(), {&load.axial, &load.shear});
  }
  panel.y = strain_axis(all);

  const bool closed =
      count > 0 && std::all_of(loads.begin(), loads.end(), [](const auto& l) { return l.axial.pieces.empty(); });

  Window window(display, height);
  window.draw([&](Canvas& canvas) {
    draw_head(canvas, height, "Strain of the gap", subtitle(findings, loads));
    if (!closed) draw_healing_windows(canvas, panel);
    draw_panel(canvas, panel, "strain, % of the gap");
    draw_places_round(canvas, panel, 14.0 + draw_closed(canvas, panel, axial));
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
  window.write(file);
}

}  // namespace gapstrain::viz
