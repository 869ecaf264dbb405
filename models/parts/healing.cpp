#include "models/parts/healing.h"

#include <algorithm>

namespace gapstrain::models {

double share_of_cycles(const ProtectedTime& time, std::string_view load) {
  const bool is_kept_from = std::find(time.without.begin(), time.without.end(), load) != time.without.end();
  return is_kept_from ? 0.0 : time.share;
}

double full_weeks(const Healing& healing, std::string_view load, double from, double to) {
  double weeks = 0.0, begin = 0.0;
  for (const ProtectedTime& time : healing.protection) {
    weeks += share_of_cycles(time, load) * std::max(0.0, std::min(to, time.until_week) - std::max(from, begin));
    begin = time.until_week;
  }
  return weeks + std::max(0.0, to - std::max(from, begin));
}

}  // namespace gapstrain::models
