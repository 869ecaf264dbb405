#include "cases/reader/read_parts.h"

namespace gapstrain::cases {

namespace {

// Where the case is silent: pieces over more than half the bone's width are no line (a choice of this program).
models::FracturePattern usual_pattern(const models::Fracture& fracture, const models::Bone& bone) {
  if (bone.stations.empty()) return models::FracturePattern::simple;
  const auto& station = bone.stations[bone.stations.size() / 2];
  const models::Length width = 0.5 * (station.width_mediolateral + station.width_craniocaudal);
  return fracture.gap > 0.5 * width ? models::FracturePattern::comminuted : models::FracturePattern::simple;
}

}  // namespace

models::Fracture read_fracture(const Section& section, const models::Bone& bone) {
  models::Fracture fracture;
  if (!section.present()) return fracture;
  fracture.position = section.get<models::Length>("position");
  fracture.gap = section.get<models::Length>("gap");
  fracture.obliquity = section.get<models::Angle>("obliquity");
  fracture.direction = section.get<models::Angle>("direction");
  if (const auto pattern = section.text("pattern"))
    fracture.pattern =
        *pattern == "comminuted" ? models::FracturePattern::comminuted : models::FracturePattern::simple;
  else
    fracture.pattern = usual_pattern(fracture, bone);
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
