#include "cases/reader/read_parts.h"

namespace gapstrain::cases {

namespace {

const std::vector<std::string_view> moduli{"longitudinal_modulus", "transverse_modulus", "shear_modulus_lt",
                                           "shear_modulus_lr", "shear_modulus_tr"};

models::CorticalBone read_own_cortex(const Section& own, CasePlaces& places) {
  const std::string source = own.text("source").value_or("");
  if (own.has_any({"youngs_modulus", "poissons_ratio"})) {
    own.require({"youngs_modulus", "poissons_ratio"}, "isotropic bone needs youngs_modulus and poissons_ratio");
    for (const auto key : moduli) {
      places.alias(own.path_of(key), own.path_of("youngs_modulus"));
      if (own.has(key))
        own.complain(key, "isotropic bone has youngs_modulus and poissons_ratio only; remove one kind");
    }
    if (own.has("poissons_ratio_lt"))
      own.complain("poissons_ratio_lt",
                   "isotropic bone has youngs_modulus and poissons_ratio only; remove one kind");
    auto cortex = models::isotropic_cortex("own", own.get<models::Stress>("youngs_modulus"),
                                           own.get<double>("poissons_ratio"), source);
    cortex.yield_strain = own.find<double>("yield_strain");
    return cortex;
  }
  const std::string_view why =
      "own bone constants are five moduli and poissons_ratio_lt, or youngs_modulus and poissons_ratio";
  own.require(moduli, why);
  own.require({"poissons_ratio_lt"}, why);
  models::CorticalBone cortex;
  cortex.name = "own";
  cortex.longitudinal_modulus = own.get<models::Stress>("longitudinal_modulus");
  cortex.transverse_modulus = own.get<models::Stress>("transverse_modulus");
  cortex.poissons_ratio_lt = own.get<double>("poissons_ratio_lt");
  cortex.shear_modulus_lt = own.get<models::Stress>("shear_modulus_lt");
  cortex.shear_modulus_lr = own.get<models::Stress>("shear_modulus_lr");
  cortex.shear_modulus_tr = own.get<models::Stress>("shear_modulus_tr");
  cortex.yield_strain = own.find<double>("yield_strain");
  cortex.source = source;
  return cortex;
}

models::CorticalBone read_cortex(const Section& bone, CasePlaces& places) {
  const Section own = bone.section("cortical_bone");
  if (bone.has("material") && bone.has("cortical_bone"))
    bone.complain("material", "given together with [bone.cortical_bone]; remove one of them");
  if (own.present()) return read_own_cortex(own, places);
  if (!bone.has_any({"material", "cortical_bone"}))
    bone.complain("material", "missing; name a cortical bone or give its constants in [bone.cortical_bone]");
  return models::find_cortex(bone.text("material").value_or("")).value_or(models::CorticalBone{});
}

std::vector<models::BoneStation> read_stations(const Section& bone) {
  std::vector<models::BoneStation> stations;
  for (const auto& section : bone.sections("station"))
    stations.push_back({section.get<models::Length>("position"), section.get<models::Length>("width_mediolateral"),
                        section.get<models::Length>("width_craniocaudal"), section.get<models::Length>("cortex"),
                        section.get<models::Length>("bow_lateral"), section.get<models::Length>("bow_cranial")});
  return stations;
}

models::BoneStation read_uniform_shaft(const Section& bone, models::Length length, CasePlaces& places) {
  places.alias("bone.station[0]", "bone");
  if (bone.has("width")) {
    for (const auto* key : {"width_mediolateral", "width_craniocaudal"})
      if (bone.has(key)) bone.complain(key, "given together with `width`, which is for a round shaft; remove one");
    places.alias("bone.station[0].width_mediolateral", bone.path_of("width"));
    places.alias("bone.station[0].width_craniocaudal", bone.path_of("width"));
  } else if (bone.has_any({"width_mediolateral", "width_craniocaudal"})) {
    bone.require({"width_mediolateral", "width_craniocaudal"},
                 "both outer widths are needed, or `width` for a round shaft");
  } else {
    bone.complain("width",
                  "missing; give `width` for a round shaft, `width_mediolateral` and `width_craniocaudal`, "
                  "or sections as [[bone.station]]");
  }
  bone.require({"cortex"}, "the wall thickness is needed with a uniform shaft");
  const auto width = bone.find<models::Length>("width");
  models::BoneStation station;
  station.position = 0.5 * length;
  station.width_mediolateral = width.value_or(bone.get<models::Length>("width_mediolateral"));
  station.width_craniocaudal = width.value_or(bone.get<models::Length>("width_craniocaudal"));
  station.cortex = bone.get<models::Length>("cortex");
  return station;
}

}  // namespace

models::Bone read_bone(const Section& section, Reading& reading) {
  models::Bone bone;
  if (!section.present()) return bone;
  bone.name = section.text("name").value_or("");
  if (const auto side = section.text("side"))
    bone.side = *side == "left" ? models::Side::left : models::Side::right;
  bone.length = section.get<models::Length>("length");
  bone.cortex = read_cortex(section, reading.places);
  if (!section.has("station")) {
    bone.stations = {read_uniform_shaft(section, bone.length, reading.places)};
    return bone;
  }
  for (const auto* key : {"width", "width_mediolateral", "width_craniocaudal", "cortex"})
    if (section.has(key)) section.complain(key, "given together with [[bone.station]]; remove one of them");
  bone.stations = read_stations(section);
  return bone;
}

}  // namespace gapstrain::cases
