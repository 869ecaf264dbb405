// Marks and texts of a plan's screws.
#pragma once

#include "models/plan/plan.h"
#include "viz/drawing/canvas.h"

#include <string>

namespace gapstrain::viz {

// Kinds are apart by the shape of their heads.
Marker head_shape(models::ScrewKind kind);
inline constexpr models::ScrewKind screw_kinds[] = {models::ScrewKind::locking, models::ScrewKind::cortical,
                                                    models::ScrewKind::compression, models::ScrewKind::lag};

// The number of a step in a circle.
inline constexpr double step_ring_radius = 20.0;
void draw_step_ring(Canvas& canvas, const Pixel& centre, int step);

// Whole numbers bare, others with one decimal: lengths to order and drills are round.
std::string length_text(models::Length length);
// With its sign and one decimal, without a unit; "0" for less than the half of a tenth.
std::string degrees_text(models::Angle angle);

}  // namespace gapstrain::viz
