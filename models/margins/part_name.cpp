#include "models/margins/part_name.h"

#include <fmt/format.h>

namespace gapstrain::models {

std::string part_name(MarginKind kind, const std::string& label) {
  switch (kind) {
    case MarginKind::plate_yield:
      return "plate, yield";
    case MarginKind::plate_fatigue:
      return "plate, fatigue";
    case MarginKind::plate_fatigue_of_all_loads:
      return "plate, fatigue under all loads";
    case MarginKind::screw_yield:
      return fmt::format("screw {}, yield", label);
    case MarginKind::screw_fatigue:
      return fmt::format("screw {}, fatigue", label);
    case MarginKind::screw_fatigue_of_all_loads:
      return fmt::format("screw {}, fatigue under all loads", label);
    case MarginKind::screw_hold:
      return fmt::format("screw {}, pull-out", label);
    case MarginKind::bone_yield:
      return "bone clear of the screws";
    case MarginKind::bone_yield_at_screws:
      break;
  }
  return "bone at the screws";
}

std::string part_name(const Margin& margin) { return part_name(margin.kind, margin.label); }

}  // namespace gapstrain::models
