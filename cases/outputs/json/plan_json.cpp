#include "cases/outputs/json/plan_json.h"
#include "models/parts/words.h"

namespace gapstrain::cases {

namespace {

Json bend_json(const models::PlateBend& bend) {
  return {{"from_hole", bend.from_hole},
          {"to_hole", bend.to_hole},
          {"at_mm", bend.at.value()},
          {"bend_deg", models::in_degrees(bend.bend)}};
}

Json screw_json(const models::OrderedScrew& screw) {
  Json json{{"label", screw.label},
            {"hole", screw.hole},
            {"kind", models::name_of(screw.kind)},
            {"size", screw.size},
            {"thread_mm", screw.thread.value()},
            {"metal", screw.metal},
            {"cortices", screw.cortices},
            {"measured_mm", screw.measured.value()}};
  put(json, "length_mm", screw.length);
  put(json, "drill_mm", screw.drill);
  put(json, "gliding_mm", screw.gliding);
  json["tilt_along_deg"] = models::in_degrees(screw.tilt_along);
  json["tilt_across_deg"] = models::in_degrees(screw.tilt_across);
  json["off_centre_mm"] = screw.off_centre.value();
  return json;
}

}  // namespace

Json plan_json(const models::Plan& plan) {
  Json json;
  json["bone"] = plan.bone;
  if (plan.side) json["side"] = models::name_of(*plan.side);
  json["fracture_position_mm"] = plan.fracture_position.value();
  json["plate"] = {{"length_mm", plan.plate_length.value()},
                   {"width_mm", plan.plate_width.value()},
                   {"thickness_mm", plan.plate_thickness.value()},
                   {"holes", plan.holes},
                   {"slots", plan.slots},
                   {"metal", plan.metal},
                   {"aspect", models::name_of(plan.aspect)},
                   {"proximal_end_mm", plan.proximal_end.value()},
                   {"standoff_mm", plan.standoff.value()}};
  if (plan.prebend)
    json["prebend"] = {{"height_mm", plan.prebend->height.value()},
                       {"at_mm", plan.prebend->at.value()},
                       {"bend_deg", models::in_degrees(plan.prebend->bend)}};
  json["bends"] = Json::array();
  for (const auto& bend : plan.bends) json["bends"].push_back(bend_json(bend));
  json["screws"] = Json::array();
  for (const auto& screw : plan.screws) json["screws"].push_back(screw_json(screw));
  json["steps"] = plan.steps;
  json["notes"] = plan.notes;
  return json;
}

}  // namespace gapstrain::cases
