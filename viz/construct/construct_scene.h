// A construct under a load as a scene: deformed, plate and screws coloured by stress, bone translucent. Shared by
// the picture of one construct and those that compare several.
#pragma once

#include "models/findings/fields.h"
#include "viz/construct/shell_surface.h"
#include "viz/drawing/sheet.h"
#include "viz/drawing/window.h"

#include <vector>

namespace gapstrain::viz {

inline constexpr double construct_label_room = 120.0;  // above and below the bodies, pixels

struct ConstructScene {
  const models::LoadFields* fields = nullptr;
  double factor = 1.0;                  // of the deformation
  std::vector<FacePoints> faces;        // of the shells, deformed
  std::vector<Eigen::Vector3d> points;  // deformed: all that has to find room, mm
  ScaleMark largest;                    // stress, MPa, of plate and screws, and whose it is
};

// @throw std::invalid_argument when there is no plate. `fields` must outlive the scene.
ConstructScene construct_scene(const models::LoadFields& fields, double factor);

// A round factor that shows the largest displacement at about 4 % of the construct's length, never less than the
// truth.
double deformation_factor(const models::LoadFields& fields);

// "deformed x 20, thin outline at rest", or that it is not magnified.
std::string deformation_text(double factor);

// Three-quarter view from the side away from +y, the bone level and the plate on top.
Projection three_quarter_view();

// How far points reach in a view, in pixels.
Rect reach(const Projection& view, const std::vector<Eigen::Vector3d>& points);

// Into the window's latest scene.
void add_construct(Window& window, const ConstructScene& scene, const Projection& view, const ColourRange& range);

// Numbers of the holes above the bodies, labels of the screws below.
void label_construct(Canvas& canvas, const ConstructScene& scene, const Projection& view);

// The row under the scenes: directions and the length bar.
void draw_directions_and_length(Canvas& canvas, double y, const Projection& view);

// With its top edge at `top`, the largest stress marked.
void draw_stress_legend(Canvas& canvas, double top, const ColourRange& range, const ScaleMark& largest);

}  // namespace gapstrain::viz
