// A plan's screws as its page shows them: the order's line, the screw it is of, the step it goes in with.
#pragma once

#include "models/parts/construct.h"
#include "models/plan/plan.h"
#include "viz/drawing/canvas.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::viz {

struct PlannedScrew {
  const models::OrderedScrew* order = nullptr;
  const models::Screw* screw = nullptr;
  int step = 0;  // 1-based, of the plan's steps
};

// In the plan's order. Both must outlive what is returned.
// @throw std::invalid_argument when the plan orders a screw that the construct has not.
std::vector<PlannedScrew> planned_screws(const models::Construct& construct, const models::Plan& plan);

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
