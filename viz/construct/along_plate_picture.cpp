#include "viz/construct/peak_text.h"
#include "viz/construct/pictures.h"
#include "viz/drawing/chart.h"
#include "viz/drawing/sheet.h"
#include "viz/drawing/ticks.h"
#include "viz/drawing/window.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace gapstrain::viz {

namespace {

constexpr int along_height = 1500;
constexpr double along_left = 190.0, along_right = 1560.0;
constexpr double strip_height = 180.0;

struct Curve {
  std::string name;
  std::vector<double> values;
};

struct Quantity {
  std::string name;
  std::vector<Curve> curves;
};

// Distinct by colour and dash, and by width where dashes are the same.
constexpr std::array<CurveStyle, 3> styles{{{.colour = curve_colours[0], .dash = Dash::solid},
                                            {.colour = curve_colours[1], .dash = Dash::dashed},
                                            {.colour = curve_colours[2], .dash = Dash::dotted}}};

template <typename Read>
std::vector<double> column(const std::vector<models::PlateStation>& stations, Read read) {
  std::vector<double> values;
  for (const auto& station : stations) values.push_back(read(station));
  return values;
}

std::array<Quantity, 3> quantities(const std::vector<models::PlateStation>& stations) {
  using Station = models::PlateStation;
  std::array<Quantity, 3> all{
      Quantity{"section force, N",
               {{"normal", column(stations, [](const Station& s) { return s.normal.value(); })},
                {"shear, flat", column(stations, [](const Station& s) { return s.shear_z.value(); })},
                {"shear, edge", column(stations, [](const Station& s) { return s.shear_y.value(); })}}},
      Quantity{"section moment, N mm",
               {{"bending, flat", column(stations, [](const Station& s) { return s.bending_flat.value(); })},
                {"bending, edge", column(stations, [](const Station& s) { return s.bending_edge.value(); })},
                {"torsion", column(stations, [](const Station& s) { return s.torsion.value(); })}}},
      Quantity{"surface stress on the centre line, MPa",
               {{"along, top", column(stations, [](const Station& s) { return s.surface_top.value(); })},
                {"along, bottom", column(stations, [](const Station& s) { return s.surface_bottom.value(); })},
                {"shear, top", column(stations, [](const Station& s) { return s.surface_shear_top.value(); })}}}};
  double largest = 0.0;
  for (const auto& curve : all[1].curves)
    for (const double value : curve.values) largest = std::max(largest, std::abs(value));
  if (largest >= 1000.0) {
    all[1].name = "section moment, N m";
    for (auto& curve : all[1].curves)
      for (double& value : curve.values) value /= 1000.0;
  }
  return all;
}

Axis axis_of(const Quantity& quantity) {
  double low = 0.0, high = 0.0;
  for (const auto& curve : quantity.curves)
    for (const double value : curve.values) {
      low = std::min(low, value);
      high = std::max(high, value);
    }
  return round_axis(low, high, 5);
}

void draw_quantity(Canvas& canvas, const Panel& panel, const Quantity& quantity,
                   const std::vector<double>& along) {
  draw_panel(canvas, panel, quantity.name);
  for (std::size_t c = 0; c < quantity.curves.size(); ++c)
    draw_curve(canvas, panel, along, quantity.curves[c].values, styles[c]);
  double y = panel.area.top - 30.0;
  for (std::size_t c = 0; c < quantity.curves.size(); ++c, y -= 52.0) {
    draw_sample(canvas, {along_right + 30.0, y}, 90.0, styles[c]);
    canvas.text({along_right + 136.0, y}, quantity.curves[c].name, {.upright = Upright::centre});
  }
}

// The plate from above: holes with their numbers, filled where a screw sits, its label below.
void draw_strip(Canvas& canvas, const Panel& panel, double top, const models::LoadFindings& findings) {
  const auto& holes = findings.plate.holes;
  double pitch = 200.0;
  for (std::size_t h = 1; h < holes.size(); ++h)
    pitch =
        std::min(pitch, panel.at(holes[h].along.value(), 0.0).x() - panel.at(holes[h - 1].along.value(), 0.0).x());
  const double radius = std::clamp(0.42 * pitch, 8.0, 26.0);
  const Rect bar{panel.at(panel.x.low, 0.0).x(), top - 68.0, panel.at(panel.x.high, 0.0).x(), top};
  canvas.fill(bar, {0.93, 0.93, 0.94});
  canvas.frame(bar, {.colour = ink::leader, .width = 2.0});
  canvas.text({along_right + 30.0, bar.centre().y()}, "holes and screws",
              {.size = letter::small, .colour = ink::quiet_text, .upright = Upright::centre});
  const int number_size = radius >= 20.0 ? letter::small : static_cast<int>(1.3 * radius);
  std::vector<Label> labels;
  for (const auto& hole : holes) {
    const Pixel centre(panel.at(hole.along.value(), 0.0).x(), bar.centre().y());
    canvas.disc(centre, radius, hole.filled ? ink::text : ink::white);
    canvas.ring(centre, radius, {.colour = ink::text, .width = 3.0});
    canvas.text(centre, std::to_string(hole.hole),
                {.size = number_size,
                 .colour = hole.filled ? ink::white : ink::text,
                 .across = Across::centre,
                 .upright = Upright::centre});
    for (const auto& screw : findings.screws)
      if (screw.hole == hole.hole)
        labels.push_back({{centre.x(), bar.bottom},
                          {centre.x(), bar.bottom - 34.0},
                          screw.label,
                          {.size = letter::small, .bold = true}});
  }
  draw_labels(canvas, labels, -32.0);
}

}  // namespace

void draw_along_plate(const Display& display, const models::LoadFindings& findings,
                      const std::filesystem::path& file) {
  const auto& stations = findings.plate.stations;
  const auto along = column(stations, [](const models::PlateStation& s) { return s.along.value(); });
  const auto all = quantities(stations);

  Axis x{0.0, 1.0, 1.0};
  for (const double place : along) x.high = std::max(x.high, place);
  for (const auto& hole : findings.plate.holes) x.high = std::max(x.high, hole.along.value());
  x.step = round_step(x.high, 10);

  constexpr double bottom = sheet::caution_height + strip_height + 110.0;
  constexpr double gap = 74.0;  // room for a panel's name
  constexpr double each = (along_height - sheet::head_height - bottom) / 3.0 - gap;
  std::array<Panel, 3> panels;
  for (std::size_t p = 0; p < panels.size(); ++p) {
    const double low = bottom + static_cast<double>(panels.size() - 1 - p) * (each + gap);
    panels[p] = {{along_left, low, along_right, low + each}, x, axis_of(all[p])};
  }

  Window window(display, along_height);
  window.draw([&](Canvas& canvas) {
    draw_head(canvas, along_height, findings.load,
              fmt::format("Section forces and surface stress along the plate; largest von Mises stress {}",
                          peak_text(findings.plate.peak)));
    for (std::size_t p = 0; p < panels.size(); ++p) draw_quantity(canvas, panels[p], all[p], along);
    draw_x_numbers(canvas, panels.back(), "mm along the plate from its proximal end");
    draw_strip(canvas, panels.back(), bottom - 110.0, findings);
    draw_caution(canvas);
  });
  window.write(file);
}

}  // namespace gapstrain::viz
