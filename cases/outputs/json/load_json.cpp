#include "cases/outputs/json/load_json.h"

#include "cases/outputs/json/compression_json.h"
#include "cases/outputs/sentences/face_name.h"
#include "models/words/load_words.h"

namespace gapstrain::cases {

namespace {

Json range(const models::Range& range) { return {{"min", range.min}, {"mean", range.mean}, {"max", range.max}}; }

Json gap_point(const models::GapPoint& point) {
  Json json{{"around_deg", (point.around / models::degree).value()},
            {"axial_motion_mm", point.axial_motion.value()},
            {"motion_y_mm", point.motion_y.value()},
            {"motion_z_mm", point.motion_z.value()},
            {"shear_motion_mm", point.shear_motion.value()}};
  put(json, "axial_strain", point.axial_strain);
  put(json, "shear_strain", point.shear_strain);
  return json;
}

void put_peak(Json& json, const models::PlatePeak& peak) {
  json["peak_von_mises_mpa"] = peak.von_mises.value();
  json["along_mm"] = peak.along.value();
  json["across_mm"] = peak.across.value();
  json["face"] = face_name(peak.face);
}

Json cycle(const models::StressCycle& cycle) {
  return {{"amplitude_mpa", cycle.amplitude.value()}, {"mean_mpa", cycle.mean.value()}};
}

Json plate_fatigue(const models::PlateFatigue& fatigue) {
  Json json = cycle(fatigue.cycle);
  json["reversed_mpa"] = fatigue.reversed.value();
  json["along_mm"] = fatigue.along.value();
  json["across_mm"] = fatigue.across.value();
  json["face"] = face_name(fatigue.face);
  put(json, "hole", fatigue.hole);
  return json;
}

Json plate(const models::PlateFindings& plate) {
  Json json;
  put_peak(json, plate.peak);
  put(json, "hole", plate.peak.hole);
  put(json, "factor_to_yield", plate.factor_to_yield);
  json["share_over_yield"] = plate.share_over_yield;
  if (plate.fatigue) json["fatigue"] = plate_fatigue(*plate.fatigue);
  json["holes"] = Json::array();
  for (const auto& hole : plate.holes) {
    Json entry{{"hole", hole.hole}, {"filled", hole.filled}, {"centre_mm", hole.along.value()}};
    put_peak(entry, hole.peak);
    put(entry, "peak_solid_mpa", hole.peak_solid);
    json["holes"].push_back(entry);
  }
  return json;
}

Json bone(const models::BoneFindings& bone) {
  Json json{{"peak_strain", bone.peak_strain}, {"peak_strain_at_screws", bone.peak_strain_at_screws}};
  put(json, "factor_to_yield_strain", bone.factor_to_yield_strain);
  return json;
}

Json variant(const models::WorkingLengthVariant& variant) {
  Json json{{"move", variant.further_out ? "further_out" : "further_in"}};
  put(json, "unavailable", variant.unavailable);
  if (variant.unavailable) return json;
  json["working_length_mm"] = variant.working_length.value();
  json["change_of_peak_stress"] = variant.peak_stress;
  put(json, "change_of_gap_strain", variant.gap_strain);
  json["change_of_gap_motion"] = variant.gap_motion;
  json["change_of_stiffness"] = variant.stiffness;
  return json;
}

}  // namespace

Json gap_json(const models::GapFindings& gap) {
  Json json;
  json["largest_motion_mm"] = gap.largest_motion.value();
  if (gap.axial_strain) json["axial_strain"] = range(*gap.axial_strain);
  if (gap.shear_strain) json["shear_strain"] = range(*gap.shear_strain);
  json["share_of_edge"] = {{"bone", gap.windows.bone},
                           {"cartilage", gap.windows.cartilage},
                           {"granulation", gap.windows.granulation},
                           {"none", gap.windows.none},
                           {"closed", gap.windows.closed}};
  json["near"] = gap_point(gap.near);
  json["far"] = gap_point(gap.far);
  json["edge"] = Json::array();
  for (const auto& point : gap.edge) json["edge"].push_back(gap_point(point));
  return json;
}

Json screw_json(const models::ScrewFindings& screw) {
  Json json{{"label", screw.label},
            {"hole", screw.hole},
            {"axial_n", screw.axial.value()},
            {"shear_x_n", screw.shear_x.value()},
            {"shear_y_n", screw.shear_y.value()},
            {"bending_y_n_mm", screw.bending_y.value()},
            {"bending_x_n_mm", screw.bending_x.value()},
            {"torsion_n_mm", screw.torsion.value()},
            {"peak_core_stress_mpa", screw.peak_bending_stress.value()}};
  put(json, "factor_to_yield", screw.factor_to_yield);
  json["head_cycle"] = cycle(screw.head_cycle);
  json["thread_cycle"] = cycle(screw.thread_cycle);
  json["cortices"] = Json::array();
  for (const auto& wall : screw.cortices)
    json["cortices"].push_back({{"cortex", wall.far ? "far" : "near"},
                                {"wall_mm", wall.wall.value()},
                                {"pull_n", wall.pull.value()},
                                {"shear_n", wall.shear.value()}});
  return json;
}

Json stiffness_json(const models::StiffnessFindings& stiffness) {
  Json json{{"axial_n_per_mm", stiffness.axial.value()},
            {"bending_y_n_mm_per_rad", stiffness.bending_y.value()},
            {"bending_z_n_mm_per_rad", stiffness.bending_z.value()},
            {"torsion_n_mm_per_rad", stiffness.torsion.value()}};
  if (stiffness.with_contact) json["under_axial_n"] = stiffness.force.value();
  return json;
}

Json load_json(const models::LoadFindings& load, const models::LoadCase* applied) {
  Json json{{"load", load.load}};
  if (applied != nullptr) {
    json["acts"] = models::acting_parts(*applied);
    json["supports"] = models::supports_text(*applied);
  }
  put(json, "buckling_factor", load.buckling_factor);
  json["second_order"]["in_figures"] = load.second_order.amplification.has_value();
  put(json["second_order"], "load_ratio", load.second_order.load_ratio);
  put(json["second_order"], "amplification", load.second_order.amplification);
  if (const auto& large = load.second_order.large; large && large->settled) {
    json["second_order"]["turn_rad"] = large->turn.value();
    json["second_order"]["turn_within_rad"] = large->within.value();
  }
  put(json, "plate_clearance_mm", load.plate_clearance);
  json["plate_pressure_n"] = load.plate_pressure.value();
  put(json, "friction_use", load.friction_use);
  put(json, "force_left", load.force_left);
  json["gapes"] = load.gapes;
  json["gap"] = gap_json(load.gap);
  json["face"] = face_json(load.face);
  json["plate"] = plate(load.plate);
  json["screws"] = Json::array();
  for (const auto& entry : load.screws) json["screws"].push_back(screw_json(entry));
  json["bone"] = bone(load.bone);
  json["bent"] = bent_json(load.bent);
  json["working_length_effect"] = Json::array();
  for (const auto& entry : load.working_length_effect) json["working_length_effect"].push_back(variant(entry));
  return json;
}

}  // namespace gapstrain::cases
