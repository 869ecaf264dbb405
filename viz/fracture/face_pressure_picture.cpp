#include "viz/construct/pictures.h"
#include "viz/drawing/sheet.h"
#include "viz/drawing/text_fit.h"
#include "viz/drawing/ticks.h"
#include "viz/drawing/window.h"
#include "viz/fracture/round_bone.h"

#include <fmt/format.h>

#include <algorithm>
#include <numbers>

namespace gapstrain::viz {

namespace {

constexpr double mean_over = 30.0;  // degrees each side, as models::FaceFindings' near and far
constexpr Colour mean_tint{0.91, 0.92, 0.94};

// The faces in one state: after the last step, or under a load.
struct State {
  std::string name;
  const models::FaceFindings* face = nullptr;
  std::string remark;
  CurveStyle style;
  RoundCurve pressure, opening;  // MPa, mm; means of the two points through the wall
  double largest_pressure = 0.0, largest_opening = 0.0;
};

void read_points(State& state) {
  auto points = state.face->points;
  std::stable_sort(points.begin(), points.end(), [](const auto& a, const auto& b) { return a.around < b.around; });
  std::vector<double> around, pressure, opening;
  for (std::size_t i = 0; i < points.size();) {
    constexpr double same_place = 1e-6;
    double pressures = 0.0, openings = 0.0;
    std::size_t next = i;
    for (; next < points.size() && points[next].around.value() - points[i].around.value() < same_place; ++next) {
      pressures += points[next].pressure.value();
      openings += points[next].opening.value();
    }
    const auto count = static_cast<double>(next - i);
    around.push_back(points[i].around.value() * 180.0 / std::numbers::pi);
    pressure.push_back(pressures / count);
    opening.push_back(openings / count);
    state.largest_pressure = std::max(state.largest_pressure, pressure.back());
    state.largest_opening = std::max(state.largest_opening, opening.back());
    i = next;
  }
  state.style.markers_apart = std::max<std::size_t>(around.size() / 12, 1);
  state.style.first_marker = state.style.first_marker * state.style.markers_apart / most_loads;
  state.pressure = round_curve(around, pressure);
  state.opening = round_curve(around, opening);
}

std::vector<State> states_of(const models::Findings& findings) {
  std::vector<State> states;
  if (!findings.compression.steps.empty()) {
    const CurveStyle style{.colour = ink::text, .dash = Dash::dashed, .width = 6.0};
    states.push_back({"after the last step", &findings.compression.steps.back().face, "", style, {}, {}});
  }
  const std::size_t count = std::min(findings.loads.size(), most_loads);
  for (std::size_t l = 0; l < count; ++l) {
    const auto& load = findings.loads[l];
    CurveStyle style = load_style(l, 1);
    style.first_marker = l;
    std::string remark;
    if (load.force_left) remark = fmt::format(" ({:.0f} % of it)", 100.0 * *load.force_left);
    if (load.gapes) remark += ", gapes";
    states.push_back({load.load, &load.face, remark, style, {}, {}});
  }
  for (auto& state : states) read_points(state);
  return states;
}

void draw_legend(Canvas& canvas, double top, const std::vector<State>& states) {
  for (std::size_t s = 0; s < states.size(); ++s) {
    const auto& face = *states[s].face;
    const double y = top - sheet::legend_row * (static_cast<double>(s) + 0.5);
    const TextStyle style{.upright = Upright::centre};
    canvas.text({sheet::margin, y}, states[s].name, fitted(canvas, states[s].name, style, 480.0));
    draw_sample(canvas, {560.0, y}, 110.0, states[s].style);
    canvas.text({690.0, y}, fmt::format("{:.0f} N{}", face.force.value(), states[s].remark), style);
    canvas.text({1130.0, y}, fmt::format("touches {:.0f} %", 100.0 * face.touching), style);
    canvas.text({1400.0, y},
                fmt::format("near {:.2g}, far {:.2g}, peak {:.2g} MPa", face.near.value(), face.far.value(),
                            face.peak.value()),
                style);
  }
}

void draw_means(Canvas& canvas, const Panel& panel) {
  for (const auto& [from, to] : {std::pair(0.0, mean_over), std::pair(180.0 - mean_over, 180.0 + mean_over),
                                 std::pair(360.0 - mean_over, 360.0)})
    canvas.fill({panel.at(from, 0.0).x(), panel.area.bottom, panel.at(to, 0.0).x(), panel.area.top}, mean_tint);
}

}  // namespace

void draw_face_pressure(const Display& display, const models::Findings& findings,
                        const std::filesystem::path& file) {
  const auto states = states_of(findings);
  double pressure = 0.0, opening = 0.0;
  for (const auto& state : states) {
    pressure = std::max(pressure, state.largest_pressure);
    opening = std::max(opening, state.largest_opening);
  }
  const bool opens = opening > 0.0;
  constexpr double between = 80.0, opening_height = 260.0;
  constexpr int height = 1400;
  const double legend_top = sheet::caution_height + 20.0 + sheet::legend_row * static_cast<double>(states.size());
  const double bottom = legend_top + 140.0;
  constexpr double right_edge = picture_width - 120.0;
  const Panel lower{
      {150.0, bottom, right_edge, bottom + opening_height}, round_bone_axis(), round_axis(0.0, opening, 4)};
  const Panel upper{
      {150.0, opens ? lower.area.top + between : bottom, right_edge, height - sheet::head_height - 60.0},
      round_bone_axis(),
      round_axis(0.0, pressure, 8)};

  Window window(display, height);
  window.draw([&](Canvas& canvas) {
    std::string subtitle = "Mean through the wall; near and far are means over the shaded 60°";
    if (findings.loads.size() > most_loads)
      subtitle += fmt::format(". First {} of {} loads", most_loads, findings.loads.size());
    draw_head(canvas, height, "Pressure of the fracture's faces", subtitle);
    draw_means(canvas, upper);
    draw_panel(canvas, upper, "pressure, MPa");
    if (opens) {
      draw_means(canvas, lower);
      draw_panel(canvas, lower, "opening, mm");
    }
    draw_places_round(canvas, opens ? lower : upper, 14.0);
    for (const auto& state : states) {
      state.pressure.draw(canvas, upper, state.style);
      if (opens) state.opening.draw(canvas, lower, state.style);
    }
    draw_legend(canvas, legend_top, states);
    draw_caution(canvas);
  });
  window.write(file);
}

}  // namespace gapstrain::viz
