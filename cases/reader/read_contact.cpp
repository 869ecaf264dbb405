#include "cases/reader/read_parts.h"

namespace gapstrain::cases {

models::Contact read_contact(const Section& section) {
  models::Contact contact;
  const std::string friction = section.text("friction").value_or("");
  if (friction == "none") contact.friction = models::FrictionLaw::none;
  if (friction == "stick") contact.friction = models::FrictionLaw::stick;
  contact.plate_on_bone = section.get<double>("plate_on_bone");
  contact.bone_on_bone = section.get<double>("bone_on_bone");
  return contact;
}

}  // namespace gapstrain::cases
