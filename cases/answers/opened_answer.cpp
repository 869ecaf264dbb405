#include "cases/answers/opened_answer.h"

#include "cases/answers/drawing_json.h"
#include "models/layouts/hole_choices.h"
#include "models/measures/solve.h"
#include "models/parts/words.h"
#include "models/words/load_words.h"

#include <Eigen/Geometry>

namespace gapstrain::cases {

namespace {

// Of each kind the numbers of cortices that are ready, or why there is none.
Json kinds_json(const models::PreparedBodies& prepared, int hole) {
  Json kinds = Json::array();
  for (const auto& choice : models::choices_of_hole(prepared.construct, hole)) {
    const std::string kind = models::name_of(choice.screw.kind);
    if (kinds.empty() || kinds.back()["kind"] != kind) {
      const bool is_known =
          std::any_of(kinds.begin(), kinds.end(), [&](const Json& k) { return k["kind"] == kind; });
      if (!is_known) kinds.push_back({{"kind", kind}, {"cortices", Json::array()}});
    }
    auto& entry = *std::find_if(kinds.begin(), kinds.end(), [&](const Json& k) { return k["kind"] == kind; });
    if (!choice.why_not && models::has_place(prepared.candidates, choice.screw))
      entry["cortices"].push_back(choice.screw.cortices);
    else if (choice.why_not && entry["cortices"].empty())
      entry["why"] = *choice.why_not;
  }
  for (auto& entry : kinds)
    if (!entry["cortices"].empty())
      entry.erase("why");
    else if (!entry.contains("why"))
      entry["why"] = "The page's mesh is not made ready for it.";
  return kinds;
}

}  // namespace

void put_parts(Json& json, const models::PreparedBodies& prepared) {
  const models::Construct& construct = prepared.construct;
  const models::Plate& plate = only(construct.plates);
  const models::PlateShape& shape = *prepared.plates.front().shape;
  Json holes = Json::array();
  for (std::size_t k = 0; k < plate.holes.size(); ++k) {
    const models::PlateHole& hole = plate.holes[k];
    const auto number = static_cast<int>(k) + 1;
    const auto centre = shape.mid_surface(hole.position.value(), 0.0);
    holes.push_back({{"hole", number},
                     {"along_mm", hole.position.value()},
                     {"at", point_json(centre.position)},
                     {"normal", point_json(centre.normal)},
                     {"distal", point_json(Eigen::Vector3d::UnitY().cross(centre.normal))},
                     {"diameter_mm", hole.diameter.value()},
                     {"slot_length_mm", hole.slot_length.value()},
                     {"shape", hole.shape == models::HoleShape::slot ? "slot" : "round"},
                     {"kinds", kinds_json(prepared, number)}});
  }
  json["plate"] = {{"length_mm", plate.length.value()}, {"holes", holes}};
  json["bone"] = {{"name", construct.bone.name}, {"length_mm", construct.bone.length.value()}};
  const models::Fracture& fracture = only(construct.fractures);
  json["fracture"] = {{"position_mm", fracture.position.value()}, {"gap_mm", fracture.gap.value()}};
  json["loads"] = Json::array();
  for (const auto& load : construct.loads)
    json["loads"].push_back(
        {{"load", load.name}, {"acts", models::acting_parts(load)}, {"supports", models::supports_text(load)}});
  std::vector<models::Tissue> tissues;
  for (const auto& name : models::tissue_names()) tissues.push_back(*models::find_tissue(name));
  std::stable_sort(tissues.begin(), tissues.end(),
                   [](const auto& a, const auto& b) { return a.youngs_modulus < b.youngs_modulus; });
  json["tissues"] = Json::array();
  for (const auto& tissue : tissues)
    json["tissues"].push_back({{"name", tissue.name}, {"modulus_mpa", tissue.youngs_modulus.value()}});
}

}  // namespace gapstrain::cases
