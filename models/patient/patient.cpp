#include "models/patient/patient.h"

#include <fmt/format.h>

namespace gapstrain::models {

std::string_view name_of(Species species) { return species == Species::dog ? "dog" : "cat"; }

std::string_view name_of(LongBone bone) {
  switch (bone) {
    case LongBone::humerus:
      return "humerus";
    case LongBone::radius:
      return "radius";
    case LongBone::femur:
      return "femur";
    case LongBone::tibia:
      break;
  }
  return "tibia";
}

void check_mass(Species species, Mass mass) {
  const Mass least = (species == Species::dog ? 1.5 : 2.0) * kilogram;
  const Mass most = (species == Species::dog ? 80.0 : 10.0) * kilogram;
  if (mass >= least && mass <= most) return;  // false for no number as well
  throw PatientError(
      Subject::mass,
      fmt::format("The {} weighs {:.4g} kg; allowed are {:.4g} to {:.4g} kg, for which sizes and loads are known. "
                  "Weigh it again, or write the case by hand from measured sizes and loads.",
                  name_of(species), mass.value(), least.value(), most.value()));
}

}  // namespace gapstrain::models
