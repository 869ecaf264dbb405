#include "cases/outputs/tables/race_weeks.h"

namespace gapstrain::cases {

std::vector<double> weeks_of_moments(const models::Race& race, const models::StressHistory& history) {
  std::vector<double> weeks;
  for (const double progress : history.progress) weeks.push_back(progress * race.union_week.middle);
  return weeks;
}

}  // namespace gapstrain::cases
