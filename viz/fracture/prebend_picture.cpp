#include "viz/construct/pictures.h"
#include "viz/drawing/chart.h"
#include "viz/drawing/sheet.h"
#include "viz/drawing/side_names.h"
#include "viz/drawing/ticks.h"
#include "viz/drawing/window.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace gapstrain::viz {

namespace {

constexpr int prebend_height = 1330;
constexpr double prebend_left = 150.0, prebend_right = 1580.0;

constexpr CurveStyle near_style{.colour = curve_colours[0], .dash = Dash::solid, .marker = Marker::circle};
constexpr CurveStyle far_style{.colour = curve_colours[1], .dash = Dash::dashed, .marker = Marker::square};
constexpr CurveStyle uneven_style{.colour = curve_colours[2], .dash = Dash::solid, .marker = Marker::triangle};

std::vector<double> column(const std::vector<models::PrebendPoint>& curve,
                           double (*read)(const models::PrebendPoint&)) {
  std::vector<double> values;
  for (const auto& point : curve) values.push_back(read(point));
  return values;
}

void draw_mark(Canvas& canvas, const Panel& panel, double height) {
  const double x = panel.at(height, 0.0).x();
  canvas.line({x, panel.area.bottom}, {x, panel.area.top},
              {.colour = ink::text, .width = 4.0, .dash = Dash::dotted});
}

}  // namespace

void draw_prebend(const Display& display, const models::PrebendFindings& findings,
                  const std::filesystem::path& file) {
  using Point = models::PrebendPoint;
  const auto& curve = findings.curve;
  const auto height = column(curve, [](const Point& p) { return p.height.value(); });
  const auto near = column(curve, [](const Point& p) { return p.near.value(); });
  const auto far = column(curve, [](const Point& p) { return p.far.value(); });
  const auto unevenness = column(curve, [](const Point& p) { return p.unevenness; });
  const auto largest = [](const std::vector<double>& values) {
    return values.empty() ? 0.0 : *std::max_element(values.begin(), values.end());
  };
  const auto smallest = [](const std::vector<double>& values) {
    return values.empty() ? 0.0 : *std::min_element(values.begin(), values.end());
  };

  Axis x{smallest(height), largest(height), 1.0};
  if (!(x.high > x.low)) x.high = x.low + 1.0;
  x.step = round_step(x.high - x.low, 10);
  constexpr double bottom = sheet::caution_height + 120.0, between = 90.0, lower_height = 330.0;
  const Panel lower{
      {prebend_left, bottom, prebend_right, bottom + lower_height}, x, round_axis(0.0, largest(unevenness), 5)};
  const Panel upper{
      {prebend_left, lower.area.top + between, prebend_right, prebend_height - sheet::head_height - 60.0},
      x,
      round_axis(0.0, std::max(largest(near), largest(far)), 8)};
  const auto& enough = findings.sufficient;

  Window window(display, prebend_height);
  window.draw([&](Canvas& canvas) {
    draw_head(
        canvas, prebend_height, "Prebend of the plate over the fracture",
        fmt::format("Sufficient: {:.2g} mm, with near {:.2g} MPa, far {:.2g} MPa, {:.0f} % of the face touching, "
                    "{:.0f} N across; most even: {:.2g} mm",
                    enough.height.value(), enough.near.value(), enough.far.value(), 100.0 * enough.touching,
                    enough.force.value(), findings.most_even.height.value()));
    draw_panel(canvas, upper, "pressure of the faces after the last step, MPa");
    draw_panel(canvas, lower, "unevenness: standard deviation of the pressure / its mean");
    for (const auto* panel : {&upper, &lower}) draw_mark(canvas, *panel, enough.height.value());
    draw_curve(canvas, upper, height, far, far_style);
    draw_curve(canvas, upper, height, near, near_style);
    draw_curve(canvas, lower, height, unevenness, uneven_style);
    const double mark = upper.at(enough.height.value(), 0.0).x();
    const bool at_right = mark > upper.area.centre().x();
    canvas.text({mark + (at_right ? -14.0 : 14.0), upper.area.top - 14.0}, "sufficient",
                {.across = at_right ? Across::right : Across::left, .upright = Upright::top, .bold = true});
    if (!curve.empty()) {
      draw_side_names(canvas, upper,
                      {{near.back(), "near cortex", near_style}, {far.back(), "far cortex", far_style}});
      draw_side_names(canvas, lower, {{unevenness.back(), "unevenness", uneven_style}});
    }
    draw_x_numbers(canvas, lower, "prebend, mm: height of the plate's bend over the fracture");
    draw_caution(canvas);
  });
  window.write(file);
}

}  // namespace gapstrain::viz
