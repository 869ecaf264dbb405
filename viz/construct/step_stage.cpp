#include "viz/construct/step_stage.h"

#include "viz/construct/screw_surface.h"
#include "viz/construct/step_choice.h"
#include "viz/drawing/ticks.h"

#include <vtkActor.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>

namespace gapstrain::viz {

namespace {

constexpr double shown_share = 0.03;   // largest shown motion or gap, of the shown length
constexpr double beyond_plate = 0.06;  // of the plate's length, shown at each of its ends
constexpr double rod_radius = 0.7;     // mm

const models::ShellField& plate_of_step(const models::StepFields& step) {
  const auto plate = std::find_if(step.shells.begin(), step.shells.end(),
                                  [](const auto& shell) { return shell.kind == models::BodyKind::plate; });
  if (plate == step.shells.end()) throw std::invalid_argument("there is no plate among the bodies to draw");
  return *plate;
}

double largest_motion(const std::vector<models::StepFields>& steps) {
  double largest = 0.0;
  for (const auto& step : steps)
    for (const auto& shell : step.shells)
      largest = std::max(largest, shell.displacements.rowwise().norm().maxCoeff());
  return largest;
}

}  // namespace

// Straight from the side but for a glance at the plate's top face; the cut stays edge on.
StepStage set_stage(const std::vector<models::StepFields>& steps, const std::vector<std::size_t>& shown,
                    double width) {
  StepStage stage;
  const auto& plate = plate_of_step(steps.front());
  const double low = plate.mesh->nodes.col(0).minCoeff(), high = plate.mesh->nodes.col(0).maxCoeff();
  const double length = (1.0 + 2.0 * beyond_plate) * (high - low);
  const double motion = std::max(largest_motion(steps), gap_at_rest(steps.front().shells));
  if (motion > 0.0) stage.factor = std::max(1.0, round_below(1.3 * shown_share * length / motion));

  stage.view = level_view(Eigen::Vector3d(0.0, -0.97, 0.24), Eigen::Vector3d::UnitX());
  stage.view.pixels_per_mm = width / length;
  double bottom = 1e9, top = -1e9;
  const auto cover = [&](const Eigen::Vector3d& place) {
    if (std::abs(place.x() - 0.5 * (low + high)) > 0.5 * length) return;
    bottom = std::min(bottom, stage.view.up.dot(place));
    top = std::max(top, stage.view.up.dot(place));
  };
  for (const auto s : shown) {
    const MagnifiedStep step = magnify(steps[s], stage.factor);
    for (const auto& faces : step.faces)
      for (Eigen::Index i = 0; i < faces.top.rows(); ++i) cover(faces.top.row(i));
    for (const auto& screw : step.screws)
      for (const auto& place : screw.axis) cover(place);
    for (const auto& hold : step.holds)
      for (const auto& place : {hold.from, hold.to}) cover(place);
  }
  stage.view.target = 0.5 * (low + high) * stage.view.right + 0.5 * (bottom + top) * stage.view.up;
  stage.scene_height = std::ceil((top - bottom) * stage.view.pixels_per_mm) + 16.0;

  bool all_stressed = true;
  for (const auto s : shown) {
    const auto& stress = plate_of_step(steps[s]).von_mises_top;
    all_stressed = all_stressed && stress.size() > 0;
    if (stress.size() > 0) stage.largest_stress = std::max(stage.largest_stress, stress.maxCoeff());
  }
  if (!all_stressed) stage.largest_stress = 0.0;
  return stage;
}

void add_bodies(Window& window, const models::StepFields& fields, const MagnifiedStep& step,
                const StepStage& stage) {
  const auto& plate = plate_of_step(fields);
  for (const auto& screw : step.screws) {
    const SurfaceStyle style{.colour = screw.is_worked_on ? step_ink::fresh : step_ink::standing};
    window.add(plain_actor(shaft_surface(screw, 0.0), style));
    window.add(plain_actor(head_surface(screw, plate.mesh->thickness.mean(), 0.0), style));
  }
  for (const auto& hold : step.holds)
    window.add(plain_actor(rod_surface(hold, rod_radius), {.colour = step_ink::temporary}));

  const Eigen::RowVector3d in_front = 0.05 * stage.view.towards_viewer.transpose();
  std::vector<ShellSurface> bones;
  for (std::size_t s = 0; s < fields.shells.size(); ++s) {
    const auto& shell = fields.shells[s];
    ShellSurface surface = shell_surface(*shell.mesh, step.faces[s]);
    if (shell.kind == models::BodyKind::bone) {
      window.add(line_actor(lines(boundary_edges(*shell.mesh), step.faces[s].top.rowwise() + in_front),
                            {.colour = ink::text, .width = 2.0}));
      bones.push_back(std::move(surface));
      continue;
    }
    const bool stressed = stage.largest_stress > 0.0;
    if (stressed)
      set_scalars(surface, *shell.mesh, shell.von_mises_top,
                  shell.von_mises_bottom.size() > 0 ? shell.von_mises_bottom : shell.von_mises_top);
    for (const auto& part : {surface.top, surface.bottom, surface.rim})
      window.add(stressed ? scalar_actor(part, colour_range(stage.largest_stress).high) : plain_actor(part, {}));
  }
  Colour wall = ink::bone, cut = ink::bone;
  wall.opacity = 0.5;
  cut.opacity = 0.8;
  for (const auto& bone : bones) window.add(plain_actor(bone.top, {wall, Cull::front, 0.75}));
  for (const auto& bone : bones) window.add(plain_actor(bone.rim, {cut, Cull::nothing, 0.3}));
  for (const auto& bone : bones) window.add(plain_actor(bone.top, {wall, Cull::back, 0.75}));
}

}  // namespace gapstrain::viz
