#include "viz/construct/face_ring.h"
#include "viz/construct/pictures.h"
#include "viz/construct/step_choice.h"
#include "viz/construct/step_stage.h"
#include "viz/drawing/chart.h"
#include "viz/drawing/ruler.h"
#include "viz/drawing/sheet.h"
#include "viz/drawing/text_fit.h"
#include "viz/drawing/ticks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>

namespace gapstrain::viz {

namespace {

constexpr std::size_t most_steps = 12;
constexpr double between_cells = 44.0, text_line = 38.0, label_row = 28.0, force_row = 46.0, detail_row = 44.0;
constexpr double legend_line = 48.0, ring_radius = 42.0, label_spacing = 64.0;

constexpr Colour force_colour = curve_colours[0];

// What all cells have in common.
struct Common {
  StepStage stage;
  std::size_t title_rows = 1;
  double label_room = 56.0;  // over the bodies, for labels in one row
  double largest_force = 0.0, largest_pressure = 0.0;
};

// What else there is to say of a step, the most important first.
std::vector<std::string> details(const models::StepFindings& step) {
  std::vector<std::string> texts;
  if (step.by_hand) texts.emplace_back("held by hand");
  if (step.face.touching > 0.0)
    texts.push_back(fmt::format("near {:.2g}, far {:.2g} MPa", step.face.near.value(), step.face.far.value()));
  constexpr double shown_travel = 0.005;  // mm
  if (std::abs(step.travel.value()) >= shown_travel)
    texts.push_back(fmt::format("travel {} mm", tick_text(step.travel.value(), 0.01)));
  return texts;
}

struct Cell {
  Rect scene;
  std::size_t step = 0;
};

constexpr TextStyle title_style{.upright = Upright::centre, .bold = true};

std::vector<std::string> title_lines(Canvas& canvas, const Cell& cell, const std::string& step) {
  return wrapped(canvas, fmt::format("{}. {}", cell.step + 1, step), title_style, cell.scene.width(), 2);
}

Projection view_of(const Cell& cell, const StepStage& stage) {
  Projection view = stage.view;
  view.at = cell.scene.centre();
  return view;
}

// What the step puts in and what holds for a while, over the bodies.
std::vector<Label> labels_of(const Cell& cell, const Projection& view, const MagnifiedStep& step) {
  double bodies_top = cell.scene.bottom;
  for (const auto& faces : step.faces)
    for (Eigen::Index i = 0; i < faces.top.rows(); ++i)
      bodies_top = std::max(bodies_top, view.pixel(faces.top.row(i)).y());
  std::vector<Label> labels;
  const auto label = [&](const Eigen::Vector3d& at, const std::string& text, const Colour& colour) {
    const Pixel place = view.pixel(at);
    labels.push_back({place,
                      {place.x(), std::max(place.y(), bodies_top) + 30.0},
                      text,
                      {.size = letter::small, .colour = colour, .bold = true}});
  };
  for (const auto& screw : step.screws)
    if (screw.is_worked_on) label(screw.axis.front(), screw.label, step_ink::fresh);
  for (const auto& hold : step.holds) label(hold.from, hold.label, step_ink::temporary);
  std::vector<double> places;
  for (const auto& one : labels) places.push_back(one.place.x());
  places = spread(places, label_spacing, cell.scene.left, cell.scene.right);
  for (std::size_t l = 0; l < labels.size(); ++l) labels[l].place.x() = places[l];
  return labels;
}

// Over the scene, with all of them apart.
double labels_height(Canvas& canvas, const Cell& cell, const Projection& view, const MagnifiedStep& step) {
  double height = 0.0;
  for (const auto& label : moved_apart(canvas, labels_of(cell, view, step), label_row))
    height = std::max(height, label.place.y() + label.style.size - cell.scene.top);
  return height;
}

void draw_cell(Canvas& canvas, const Cell& cell, const models::StepFindings& findings,
               const models::StepFields& fields, const MagnifiedStep& step, const Common& common) {
  const auto rows = title_lines(canvas, cell, fields.text);
  double y = cell.scene.top + common.label_room + (static_cast<double>(rows.size()) - 0.5) * text_line;
  for (const auto& row : rows) {
    canvas.text({cell.scene.left, y}, row, title_style);
    y -= text_line;
  }
  draw_labels(canvas, labels_of(cell, view_of(cell, common.stage), step), label_row);

  // Force on the common scale, its number at the left, the face at the right.
  constexpr double number_width = 150.0, bar_height = 26.0;
  const double middle = cell.scene.bottom - 0.5 * force_row;
  const double right = cell.scene.right - 2.0 * ring_radius - 30.0;
  canvas.text({cell.scene.left, middle}, fmt::format("{:.0f} N", fields.force),
              {.upright = Upright::centre, .bold = true});
  Rect bar{cell.scene.left + number_width, middle - 0.5 * bar_height, right, middle + 0.5 * bar_height};
  const Rect track = bar;
  if (common.largest_force > 0.0 && fields.force > 0.0) {
    bar.right = bar.left + bar.width() * fields.force / common.largest_force;
    canvas.fill(bar, force_colour);
  }
  canvas.frame(track, {.colour = ink::leader, .width = 2.0});
  const TextStyle quiet{.size = letter::small, .colour = ink::quiet_text, .upright = Upright::centre};
  std::string told;
  for (const auto& text : details(findings)) {
    const std::string longer = told.empty() ? text : told + "; " + text;
    if (canvas.text_size(longer, quiet).x() <= right - cell.scene.left) told = longer;
  }
  canvas.text({cell.scene.left, middle - 0.5 * force_row - 0.5 * detail_row}, told, quiet);
  draw_face_ring(canvas, {cell.scene.right - ring_radius, cell.scene.bottom - 0.5 * (force_row + detail_row)},
                 ring_radius, findings.face, common.largest_pressure);
}

void draw_legend(Canvas& canvas, double y, const std::vector<models::StepFields>& steps, double largest_pressure) {
  if (largest_pressure > 0.0)
    canvas.text(
        {0.5 * picture_width, y - legend_line},
        fmt::format(
            "Ring: the cut, plate's side up; white is open, the darker the more pressure, up to {:.2g} MPa",
            largest_pressure),
        {.size = letter::small, .across = Across::centre, .upright = Upright::centre});
  draw_bone_directions(canvas, y);
  struct Entry {
    std::string text;
    Colour colour;
  };
  std::vector<Entry> entries{{"put in or tightened in the step", step_ink::fresh},
                             {"in since before", step_ink::standing}};
  if (std::any_of(steps.begin(), steps.end(), [](const auto& step) { return !step.holds.empty(); }))
    entries.push_back({"wire or clamp", step_ink::temporary});
  const TextStyle style{.size = letter::small, .upright = Upright::centre};
  constexpr double square = 26.0, apart = 50.0;
  double width = -apart;
  for (const auto& entry : entries) width += square + 14.0 + canvas.text_size(entry.text, style).x() + apart;
  double x = 0.5 * (picture_width - width);
  for (const auto& entry : entries) {
    canvas.fill({x, y - 0.5 * square, x + square, y + 0.5 * square}, entry.colour);
    x += square + 14.0;
    canvas.text({x, y}, entry.text, style);
    x += canvas.text_size(entry.text, style).x() + apart;
  }
}

}  // namespace

void draw_steps(const Display& display, const models::CompressionFindings& findings,
                const std::vector<models::StepFields>& steps, const std::filesystem::path& file) {
  assert(!steps.empty() && findings.steps.size() == steps.size());
  std::vector<double> forces;
  for (const auto& step : steps) forces.push_back(step.force);
  const auto shown = chosen_steps(forces, most_steps);

  const std::size_t columns = shown.size() <= 4   ? std::min<std::size_t>(shown.size(), 2)
                              : shown.size() <= 9 ? 3
                                                  : 4;
  const std::size_t rows = (shown.size() + columns - 1) / columns;
  const double cell_width =
      (picture_width - 2.0 * sheet::margin - between_cells * static_cast<double>(columns - 1)) /
      static_cast<double>(columns);
  Common common{.stage = set_stage(steps, shown, cell_width)};
  const StepStage& stage = common.stage;
  common.largest_force = *std::max_element(forces.begin(), forces.end());
  for (const auto& step : findings.steps)
    common.largest_pressure = std::max(common.largest_pressure, step.face.peak.value());
  std::vector<MagnifiedStep> magnified;
  Ruler ruler;
  for (const auto s : shown) {
    magnified.push_back(magnify(steps[s], stage.factor));
    const Cell cell{{sheet::margin, 0.0, sheet::margin + cell_width, stage.scene_height}, s};
    common.title_rows = std::max(common.title_rows, title_lines(ruler.canvas(), cell, steps[s].text).size());
    common.label_room =
        std::max(common.label_room, labels_height(ruler.canvas(), cell, view_of(cell, stage), magnified.back()));
  }
  const double title_height = text_line * static_cast<double>(common.title_rows);
  const double cell_height = title_height + common.label_room + stage.scene_height + force_row + detail_row + 36.0;
  const bool stressed = stage.largest_stress > 0.0;
  const double foot = sheet::caution_height + (stressed ? sheet::legend_height : 0.0) + 2.0 * legend_line + 20.0;
  const int height = static_cast<int>(foot + cell_height * static_cast<double>(rows) + sheet::head_height);

  Window window(display, height);
  std::vector<Cell> cells;
  for (std::size_t k = 0; k < shown.size(); ++k) {
    const auto row = k / columns, column = k % columns;
    const double left = sheet::margin + (cell_width + between_cells) * static_cast<double>(column);
    const double top =
        height - sheet::head_height - cell_height * static_cast<double>(row) - title_height - common.label_room;
    cells.push_back({{left, top - stage.scene_height, left + cell_width, top}, shown[k]});
    window.open_scene(cells.back().scene, view_of(cells.back(), stage));
    add_bodies(window, steps[shown[k]], magnified[k], stage);
  }
  window.draw([&](Canvas& canvas) {
    std::string subtitle =
        stage.factor > 1.0
            ? fmt::format("Force across the fracture after each; motion and gap drawn x {:.0f}", stage.factor)
            : std::string("Force across the fracture after each; true motion");
    if (shown.size() < steps.size())
      subtitle += fmt::format("; {} steps that change it least are left out", steps.size() - shown.size());
    draw_head(
        canvas, height,
        steps.size() == 1 ? std::string("Built in one step") : fmt::format("Built in {} steps", steps.size()),
        subtitle);
    for (std::size_t k = 0; k < cells.size(); ++k)
      draw_cell(canvas, cells[k], findings.steps[cells[k].step], steps[cells[k].step], magnified[k], common);
    draw_legend(canvas, foot - 0.5 * legend_line, steps, common.largest_pressure);
    if (stressed)
      draw_colour_legend(canvas, foot - 2.0 * legend_line - 24.0, colour_range(stage.largest_stress),
                         ScaleMark{stage.largest_stress, "largest"}, "von Mises stress of the plate, MPa");
    draw_caution(canvas);
  });
  window.write(file);
}

}  // namespace gapstrain::viz
