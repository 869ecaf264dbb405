// The plate on its bone from the side, cut along the plate's centre line and true to scale, as the plan shows it:
// what is to be bent above, screws with what to order below.
#pragma once

#include "models/geometry/bone_shape.h"
#include "models/geometry/plate_shape.h"
#include "viz/plan/plan_screws.h"

#include <vector>

namespace gapstrain::viz {

struct PlanSideView {
  const models::Construct* construct = nullptr;
  const models::Plan* plan = nullptr;
  models::BoneShape bone;
  models::PlateShape plate;
  struct Shaft {
    const models::OrderedScrew* order = nullptr;
    Eigen::Vector3d head, tip;  // mm; a tip of the length to order, else of the depth
    bool beside_plate() const { return order->hole == 0; }
  };
  std::vector<Shaft> shafts;
  double low_x = 0.0, high_x = 0.0, low_z = 0.0, high_z = 0.0;  // shown, mm
  double pixels_per_mm = 1.0;

  double scene_height() const { return pixels_per_mm * (high_z - low_z); }
  double height() const;  // of all, pixels
};

// What it is of must outlive it. @pre `check` finds no error in the construct.
PlanSideView plan_side_view(const models::Construct& construct, const models::Plan& plan);

void draw_plan_side_view(Canvas& canvas, double top, const PlanSideView& view);

}  // namespace gapstrain::viz
