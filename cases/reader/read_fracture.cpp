#include "cases/reader/read_parts.h"

namespace gapstrain::cases {

models::Fracture read_fracture(const Section& section) {
  models::Fracture fracture;
  if (!section.present()) return fracture;
  fracture.position = section.get<models::Length>("position");
  fracture.gap = section.get<models::Length>("gap");
  fracture.obliquity = section.get<models::Angle>("obliquity");
  fracture.direction = section.get<models::Angle>("direction");
  const Section own = section.section("filling");
  if (section.has("tissue") && section.has("filling"))
    section.complain("tissue", "given together with [fracture.filling]; remove one of them");
  if (own.present())
    fracture.tissue = models::Tissue{"own", own.get<models::Stress>("youngs_modulus"),
                                     own.get<double>("poissons_ratio"), "case file"};
  else if (const auto name = section.text("tissue"))
    fracture.tissue = models::find_tissue(*name);
  return fracture;
}

}  // namespace gapstrain::cases
