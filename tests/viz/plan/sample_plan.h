// A made-up construct and a plan for it, filled by hand: a bowed, tapering bone, a plate that follows it, locking,
// cortical and compression screws and a lag screw beside the plate.
#pragma once

#include "models/parts/construct.h"
#include "models/plan/plan.h"

namespace gapstrain::tests {

struct PlanSizes {
  int holes = 10;
  double pitch = 12.0;       // mm
  double bone_width = 16.0;  // mm
  std::vector<int> filled{1, 2, 4, 7, 8, 10};
  bool lag_beside = true;
};

struct SamplePlan {
  models::Construct construct;
  models::Plan plan;
};

SamplePlan sample_plan(const PlanSizes& sizes = {});

}  // namespace gapstrain::tests
