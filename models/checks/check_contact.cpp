#include "models/checks/checks.h"

#include <fmt/format.h>

namespace gapstrain::models {

namespace {

void check_coefficient(const std::string& where, std::string_view subject, double found, ProblemList& problems) {
  if (found >= 0.0 && found <= 1.0) return;
  problems.error(where,
                 fmt::format("The friction coefficient of {} is {:.4g}; allowed is 0 to 1.", subject, found));
}

}  // namespace

void check_contact(const Contact& contact, ProblemList& problems) {
  check_coefficient("contact.plate_on_bone", "plate on bone", contact.plate_on_bone, problems);
  check_coefficient("contact.bone_on_bone", "bone on bone", contact.bone_on_bone, problems);
}

}  // namespace gapstrain::models
