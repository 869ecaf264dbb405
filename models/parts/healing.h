// How a patient's fracture is expected to heal under a plate: what the race between bone and plate is run over.
#pragma once

#include "models/parts/material.h"

#include <string>

namespace gapstrain::models {

// The tissue in the gap stiffens in equal ratios a week, from `at_first` on the day of the operation to `at_union`
// in the week of union (a choice of this program, no source).
struct Healing {
  double weeks_from = 0.0, weeks_to = 0.0;  // to union: any week between is as likely
  Tissue at_first, at_union;
  // The patient's activity: cycles a day lie between the loads' own divided by this factor and multiplied by it.
  double activity_factor = 2.0;
};

}  // namespace gapstrain::models
