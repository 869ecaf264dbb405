#include "cases/outputs/json/plan_json.h"

#include "models/parts/words.h"
#include "models/words/plan_words.h"
#include "models/words/rule_words.h"

#include <variant>

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

Json prebend_json(const models::PlannedPrebend& prebend) {
  return {{"height_mm", prebend.height.value()},
          {"at_mm", prebend.at.value()},
          {"bend_deg", models::in_degrees(prebend.bend)}};
}

// What a note is about, and its numbers.
Json plan_note(const char* what) {
  Json json{{"note", what}};
  return json;
}

Json plan_note(const char* what, const models::RuleParts& screws) {
  Json json = plan_note(what);
  json["screws"] = Json::array();
  for (const auto& screw : screws) json["screws"].push_back(models::name_of(screw));
  return json;
}

// With the number that it is about.
Json plan_note(const char* what, const models::RulePart& screw, const char* key, double value) {
  Json json = plan_note(what, models::RuleParts{screw});
  json[key] = value;
  return json;
}

struct NoteJson {
  Json operator()(const models::NoLengthToOrder&) const { return plan_note("no_length_to_order"); }
  Json operator()(const models::NoSteps&) const { return plan_note("no_steps"); }
  Json operator()(const models::BendAtLockingHole& bend) const {
    return {{"note", "bend_at_locking_hole"}, {"hole", bend.hole}, {"bend_deg", models::in_degrees(bend.bend)}};
  }
  Json operator()(const models::BendBetweenHoles&) const { return plan_note("bend_between_holes"); }
  Json operator()(const models::PlannedPrebend& prebend) const {
    Json json = plan_note("prebend");
    json.update(prebend_json(prebend));
    return json;
  }
  Json operator()(const models::FreeEntryNote& entry) const {
    Json json = plan_note("free_entry", entry.screw, "position_mm", entry.position.value());
    json["around_deg"] = models::in_degrees(entry.around);
    return json;
  }
  Json operator()(const models::AimNote& aim) const {
    Json json = plan_note("aim", aim.screw, "tilt_along_deg", models::in_degrees(aim.along));
    json["tilt_across_deg"] = models::in_degrees(aim.across);
    return json;
  }
  Json operator()(const models::OffCentreNote& drill) const {
    return plan_note("off_centre", drill.screw, "off_centre_mm", drill.off_centre.value());
  }
  Json operator()(const models::GlidingHoleNote& hole) const {
    return plan_note("gliding_hole", hole.screw, "diameter_mm", hole.diameter.value());
  }
  Json operator()(const models::OneCortexNote& screw) const {
    return plan_note("one_cortex", models::RuleParts{screw.screw});
  }
  Json operator()(const models::DrillGuideNote&) const { return plan_note("drill_guide"); }
  Json operator()(const models::UnknownDrills& drills) const { return plan_note("unknown_drills", drills.screws); }
  Json operator()(const models::OtherMetals& others) const {
    Json json = plan_note("other_metals", models::RuleParts{});
    json["metals"] = Json::array();
    for (const auto& [screw, metal] : others.screws) {
      json["screws"].push_back(models::name_of(screw));
      json["metals"].push_back(metal);
    }
    json["plate_metal"] = others.plate;
    return json;
  }
  Json operator()(const models::LengthsNote& lengths) const {
    return {{"note", "lengths"}, {"allowance_mm", lengths.allowance.value()}, {"step_mm", lengths.step.value()}};
  }
};

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
  if (plan.prebend) json["prebend"] = prebend_json(*plan.prebend);
  json["bends"] = Json::array();
  for (const auto& bend : plan.bends) json["bends"].push_back(bend_json(bend));
  json["screws"] = Json::array();
  for (const auto& screw : plan.screws) json["screws"].push_back(screw_json(screw));
  json["steps"] = plan.steps;
  json["notes"] = Json::array();
  for (const auto& one : plan.notes) {
    json["notes"].push_back(std::visit(NoteJson{}, one));
    json["notes"].back()["sentence"] = models::note_sentence(one);
  }
  return json;
}

}  // namespace gapstrain::cases
