#include "viz/compared/compared_pictures.h"
#include "viz/compared/compared_sheet.h"
#include "viz/drawing/sheet.h"
#include "viz/drawing/text_fit.h"
#include "viz/drawing/ticks.h"
#include "viz/drawing/window.h"
#include "viz/fracture/healing_windows.h"

#include <fmt/format.h>

#include <algorithm>
#include <numbers>

namespace gapstrain::viz {

namespace {

RoundCurve axial_motion_curve(const models::GapFindings& gap) {
  std::vector<double> around, motion;
  for (const auto& point : gap.edge) {
    around.push_back(point.around.value() * 180.0 / std::numbers::pi);
    motion.push_back(point.axial_motion.value());
  }
  return round_curve(around, motion);
}

Axis motion_axis(const std::vector<const RoundCurve*>& curves) {
  double low = 0.0, high = 0.0;
  for (const auto* curve : curves)
    for (const auto& piece : curve->pieces)
      for (const double value : piece.values) {
        low = std::min(low, value);
        high = std::max(high, value);
      }
  return round_axis(low, high, 8);
}

std::string figures(const models::GapFindings& gap) {
  std::string text = "closed all round";
  if (gap.axial_strain)
    text = fmt::format("axial {} to {} %", tick_text(100.0 * gap.axial_strain->min, 0.01),
                       tick_text(100.0 * gap.axial_strain->max, 0.01));
  return fmt::format("{}; moves up to {} mm", text, number_text(gap.largest_motion.value(), 2));
}

// One row a construct.
void draw_legend(Canvas& canvas, double top, const std::vector<ComparedConstruct>& constructs, bool with_load) {
  constexpr double names_width = 900.0, sample_left = 990.0, sample_width = 110.0, figures_left = 1126.0;
  for (std::size_t c = 0; c < constructs.size(); ++c) {
    const double y = top - sheet::legend_row * (static_cast<double>(c) + 0.5);
    const auto& findings = *constructs[c].findings;
    const std::string name = with_load ? constructs[c].name + ", " + findings.load : constructs[c].name;
    const TextStyle style = fitted(canvas, name, {.upright = Upright::centre}, names_width, letter::small);
    canvas.text({sheet::margin, y}, shortened(canvas, name, style, names_width), style);
    draw_sample(canvas, {sample_left, y}, sample_width, load_style(c, 1));
    const std::string text = figures(findings.gap);
    canvas.text({figures_left, y}, text,
                fitted(canvas, text, {.upright = Upright::centre}, picture_width - sheet::margin - figures_left));
  }
}

}  // namespace

void draw_gap_strain_compared(const Display& display, const std::vector<ComparedConstruct>& constructs,
                              const std::filesystem::path& file) {
  check_compared(constructs);
  const bool strained = std::all_of(constructs.begin(), constructs.end(), [](const auto& construct) {
    return construct.findings->gap.axial_strain.has_value();
  });
  std::vector<RoundCurve> curves;
  for (const auto& [name, fields, findings] : constructs)
    curves.push_back(strained ? axial_strain_curve(findings->gap) : axial_motion_curve(findings->gap));
  std::vector<const RoundCurve*> all;
  for (const auto& curve : curves) all.push_back(&curve);
  const auto closed =
      std::count_if(curves.begin(), curves.end(), [](const auto& curve) { return !curve.missing.empty(); });

  constexpr int height = 1330;
  const double legend_top =
      sheet::caution_height + 20.0 + sheet::legend_row * static_cast<double>(constructs.size());
  const Panel panel{{150.0, legend_top + 140.0 + closed_row * static_cast<double>(closed),
                     strained ? 1650.0 : picture_width - 120.0, height - sheet::head_height - 60.0},
                    round_bone_axis(),
                    strained ? strain_axis(all) : motion_axis(all)};
  std::string subtitle = strained
                             ? "Axial strain of the gap round the fracture edge; negative closes it"
                             : "Axial motion round the fracture edge, since strain has no meaning where one is "
                               "closed all round; negative closes it";
  if (closed > 0) subtitle += ". None where the faces touch";
  const auto load = common_load(constructs);

  Window window(display, height);
  window.draw([&](Canvas& canvas) {
    draw_head(canvas, height, load.value_or("Constructs compared"), subtitle);
    if (strained) draw_healing_windows(canvas, panel);
    draw_panel(canvas, panel, strained ? "axial strain, % of the gap" : "axial motion, mm");
    draw_places_round(canvas, panel, 14.0 + draw_closed(canvas, panel, all));
    for (std::size_t c = 0; c < curves.size(); ++c)
      curves[c].draw(canvas, panel, load_style(c, constructs[c].findings->gap.edge.size()));
    draw_legend(canvas, legend_top, constructs, !load);
    draw_caution(canvas);
  });
  window.write(file);
}

}  // namespace gapstrain::viz
