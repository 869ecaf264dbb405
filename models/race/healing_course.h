// The gap of a construct on its way to union, moment by moment, at one size of its loads.
#pragma once

#include "models/measures/screw_forces.h"
#include "models/race/healing_gap.h"
#include "models/race/stress_history.h"

#include <vector>

namespace gapstrain::models {

// A load that comes every day: as entered and, where parts of loads have bands, with each of these parts in turn
// at the low and at the high end of its band, all else as entered.
struct DayLoad {
  AssembledLoad entered;
  std::vector<AssembledLoad> at_ends;  // of all loads as many
};

// What parts at the ends of their bands come to at one moment, while the tissue is that of the loads as entered.
struct MomentAtEnds {
  Eigen::MatrixXd plate_forces;                             // (motions x ends), those of one load together
  std::vector<std::vector<std::vector<ScrewCuts>>> screws;  // [load][as entered, then the ends][screw]
  double strain = 0.0;                                      // the gap's largest along the bone, loads as entered
  std::vector<double> strain_at_ends;                       // likewise, all loads at that end
};

// Moments stand at equal times from the first day to union, as many as the tissue has stages.
struct CourseStates {
  std::vector<GapState> gap;                  // one a moment, `plate_peak` left out
  std::vector<Eigen::MatrixXd> plate_forces;  // one a moment: on the plate's ports (motions x loads)
  std::vector<std::vector<std::vector<ScrewCycles>>> screw_cycles;  // [moment][load][screw of HealingGap::screws]
  std::vector<MomentAtEnds> at_ends;                                // one a moment; empty without bands
};

// Each course at these loads, which are those that come every day. In the governed course each spot is asked four
// times between two moments whether its next tissue bears the strain there, and goes on by a quarter if so. Its
// tissue is that of the nearest rung. @throw ModelError
// `gaps`: one a moment, the same one again where its screws have not softened since; borrowed.
std::vector<CourseStates> follow_courses(const std::vector<const HealingGap*>& gaps,
                                         const std::vector<DayLoad>& loads,
                                         const std::vector<HealingCourse>& courses);

}  // namespace gapstrain::models
