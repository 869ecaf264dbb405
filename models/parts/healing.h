// How a patient's fracture is expected to heal under a plate: what the race between bone and plate is run over.
#pragma once

#include "models/parts/material.h"

#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::models {

// A time after the operation in which the patient is kept from loads: from the end of the one before.
struct ProtectedTime {
  double until_week = 0.0;
  double share = 1.0;                // of the loads' cycles a day that still come
  std::vector<std::string> without;  // names of loads that do not come at all
};

// The tissue in the gap stiffens in equal ratios a week, from `at_first` on the day of the operation to `at_union`
// in the week of union (a choice of this program, no source).
struct Healing {
  double weeks_from = 0.0, weeks_to = 0.0;  // to union: any week between is as likely
  Tissue at_first, at_union;
  // The patient's activity: cycles a day lie between the loads' own divided by this factor and multiplied by it.
  double activity_factor = 2.0;
  std::vector<ProtectedTime> protection{};  // one after another; then all loads come as often as they say
};

// Of a load's cycles a day.
double share_of_cycles(const ProtectedTime& time, std::string_view load);

// So many weeks of a load's full cycles come between two weeks after the operation.
double full_weeks(const Healing& healing, std::string_view load, double from, double to);

}  // namespace gapstrain::models
