// What the hand must mind when a plan is carried out.
#pragma once

#include "models/plan/plan.h"

#include <vector>

namespace gapstrain::models {

// Of a plan whose bends, prebend and screws are there.
std::vector<PlanNote> plan_notes(const Plan& plan, const Construct& construct, const PlateShape& plate_shape);

}  // namespace gapstrain::models
