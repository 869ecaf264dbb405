// The gap of a construct on its way to union, moment by moment, at one size of its loads.
#pragma once

#include "models/measures/screw_forces.h"
#include "models/race/healing_gap.h"
#include "models/race/stress_history.h"

#include <vector>

namespace gapstrain::models {

// Moments stand at equal times from the first day to union, as many as the tissue has stages.
struct CourseStates {
  std::vector<GapState> gap;                  // one a moment, `plate_peak` left out
  std::vector<Eigen::MatrixXd> plate_forces;  // one a moment: on the plate's ports (motions x loads)
  std::vector<std::vector<std::vector<ScrewCycles>>> screw_cycles;  // [moment][load][screw of HealingGap::screws]
};

// Each course at these loads, which are those that come every day. In the governed course each spot is asked four
// times between two moments whether its next tissue bears the strain there, and goes on by a quarter if so. Its
// tissue is that of the nearest rung. @throw ModelError
std::vector<CourseStates> follow_courses(const HealingGap& gap, const std::vector<AssembledLoad>& loads,
                                         const std::vector<HealingCourse>& courses);

}  // namespace gapstrain::models
