#include "cases/outputs/json/findings_json.h"

#include "cases/cautions.h"
#include "cases/files/program_json.h"
#include "cases/outputs/json/compression_json.h"
#include "cases/outputs/json/findings_keys.h"
#include "cases/outputs/json/margins_json.h"
#include "cases/outputs/json/plan_json.h"
#include "cases/outputs/json/race_json.h"
#include "cases/outputs/json/review_json.h"
#include "cases/outputs/json/state_json.h"
#include "cases/outputs/sentences/face_name.h"
#include "cases/text/text_hash.h"
#include "models/words/load_words.h"

#include <fmt/format.h>

#include <cmath>

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

Json gap(const models::GapFindings& gap) {
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

Json screw(const models::ScrewFindings& screw) {
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

Json load(const models::LoadFindings& load, const models::LoadCase* applied) {
  Json json{{"load", load.load}};
  if (applied != nullptr) {
    json["acts"] = models::acting_parts(*applied);
    json["supports"] = models::supports_text(*applied);
  }
  put(json, "buckling_factor", load.buckling_factor);
  json["second_order"]["in_figures"] = load.second_order.amplification.has_value();
  put(json["second_order"], "load_ratio", load.second_order.load_ratio);
  put(json["second_order"], "amplification", load.second_order.amplification);
  put(json, "plate_clearance_mm", load.plate_clearance);
  json["plate_pressure_n"] = load.plate_pressure.value();
  put(json, "friction_use", load.friction_use);
  put(json, "force_left", load.force_left);
  json["gapes"] = load.gapes;
  json["gap"] = gap(load.gap);
  json["face"] = face_json(load.face);
  json["plate"] = plate(load.plate);
  json["screws"] = Json::array();
  for (const auto& entry : load.screws) json["screws"].push_back(screw(entry));
  json["bone"] = bone(load.bone);
  json["bent"] = bent_json(load.bent);
  json["working_length_effect"] = Json::array();
  for (const auto& entry : load.working_length_effect) json["working_length_effect"].push_back(variant(entry));
  return json;
}

Json trust(const models::Trust& trust) {
  Json json{{"checks", Json::array()}};
  for (const auto& check : trust.checks)
    json["checks"].push_back({{"name", check.name},
                              {"value", check.value},
                              {"limit", check.limit},
                              {"passed", check.passed},
                              {"meaning", check.meaning}});
  json["mesh_error_stiffness"] = trust.mesh_error_stiffness;
  json["mesh_error_peak"] = trust.mesh_error_peak;
  return json;
}

Json construct(const models::Findings& findings) {
  const auto& figures = findings.figures;
  Json json{{"name", findings.construct}, {"working_length_mm", figures.working_length.value()}};
  put(json, "plate_span_ratio", figures.plate_span_ratio);
  json["plate_screw_density"] = figures.plate_screw_density;
  json["screws_proximal"] = figures.fragments.front().screws;
  json["screws_distal"] = figures.fragments.back().screws;
  json["screws_across"] = figures.screws_across;
  json["cortices_proximal"] = figures.fragments.front().cortices;
  json["cortices_distal"] = figures.fragments.back().cortices;
  return json;
}

// Takes the numbers out that JSON cannot hold, and notes their paths.
void drop_not_finite(Json& json, const std::string& path, std::vector<std::string>& dropped) {
  if (json.is_array())
    for (std::size_t i = 0; i < json.size(); ++i)
      drop_not_finite(json[i], fmt::format("{}[{}]", path, i), dropped);
  if (!json.is_object()) return;
  for (auto item = json.begin(); item != json.end();) {
    const std::string inner = path.empty() ? item.key() : path + "." + item.key();
    if (item.value().is_number_float() && !std::isfinite(item.value().get<double>())) {
      dropped.push_back(inner);
      item = json.erase(item);
    } else {
      drop_not_finite(item.value(), inner, dropped);
      ++item;
    }
  }
}

void add_figures(Json& json, const models::Construct& of, const models::Findings& findings,
                 const models::Assessment& assessment) {
  const auto& stiffness = findings.stiffness;
  json["construct"] = construct(findings);
  json["stiffness"] = {{"axial_n_per_mm", stiffness.axial.value()},
                       {"bending_y_n_mm_per_rad", stiffness.bending_y.value()},
                       {"bending_z_n_mm_per_rad", stiffness.bending_z.value()},
                       {"torsion_n_mm_per_rad", stiffness.torsion.value()}};
  if (stiffness.with_contact) json["stiffness"]["under_axial_n"] = stiffness.force.value();
  json["compression"] = compression_json(findings.compression);
  json["loads"] = Json::array();
  for (std::size_t l = 0; l < findings.loads.size(); ++l)
    json["loads"].push_back(load(findings.loads[l], l < of.loads.size() ? &of.loads[l] : nullptr));
  json["margins"] = margins_json(of, assessment.margins);
  json["margins_left_out"] = left_out_json(assessment.margins_left_out);
  json["review"] = review_json(assessment.review);
  json["plan"] = plan_json(assessment.plan);
  if (assessment.race) json["race"] = race_json(*assessment.race);
  if (assessment.no_race) json["no_race"] = no_race_json(*assessment.no_race);
}

}  // namespace

std::string findings_json(const models::Construct& construct, const models::Findings& findings,
                          const models::Assessment& assessment, const CaseOrigin& origin,
                          const std::vector<std::string>& files) {
  Json json;
  json["state"] = state_json(construct, assessment.state);
  json["program"] = program_json();
  json["case"] = {{"file", origin.file}, {"text_fnv1a64", fmt::format("{:016x}", fnv1a64(origin.text))}};
  json["cautions"] = cautions;
  json["assumptions"] = origin.assumptions;
  json["remarks"] = findings.remarks;
  json["trustworthy"] = assessment.state.not_trusted.empty();
  json["trust"] = trust(findings.trust);
  add_figures(json, construct, findings, assessment);
  json["files"] = files;

  std::vector<std::string> not_finite;
  drop_not_finite(json, "", not_finite);
  json["not_finite"] = not_finite;
  json["keys"] = keys_json(findings_keys());
  // Text from the user may hold bytes that are no UTF-8 in a file name; they are replaced rather than thrown over.
  return json.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

void doubt_not_finite(const models::Construct& construct, models::AssessedConstruct& assessed) {
  Json json;
  add_figures(json, construct, assessed.analysis.findings, assessed.assessment);
  std::vector<std::string> not_finite;
  drop_not_finite(json, "", not_finite);
  if (not_finite.empty()) return;
  auto& reasons = assessed.assessment.state.not_trusted;
  reasons.insert(reasons.begin(), models::NotFinite{not_finite.size(), not_finite.front()});
}

}  // namespace gapstrain::cases
