#include "cases/answers/state_answer.h"

#include "cases/answers/case_json.h"
#include "cases/answers/drawing_json.h"
#include "cases/answers/figures_json.h"
#include "cases/outputs/json/compression_json.h"
#include "cases/outputs/json/findings_json.h"
#include "cases/outputs/json/load_json.h"
#include "cases/outputs/json/review_json.h"
#include "cases/outputs/sentences/assessment_lines.h"
#include "cases/outputs/sentences/compression_sentences.h"
#include "cases/outputs/sentences/state_lines.h"
#include "cases/outputs/sentences/worst_things.h"
#include "models/catalogue/analysed_outcome.h"
#include "models/measures/compression.h"
#include "models/measures/face_pressure.h"
#include "models/measures/gap_strain.h"
#include "models/measures/screw_forces.h"
#include "models/measures/stiffness.h"
#include "models/parts/words.h"
#include "models/words/load_words.h"

#include <fmt/format.h>

#include <array>
#include <utility>

namespace gapstrain::cases {

namespace {

constexpr std::size_t widest_sentence = 400;  // of the steps: a page has room

Json screws_json(SolvedState& state) {
  Json json = Json::array();
  const auto& prepared = state.prepared();
  for (const auto& screw : state.construct().screws) {
    const auto placement =
        models::place_screw(state.construct(), *prepared.plates[screw.plate].shape, *prepared.bone_shape, screw);
    json.push_back({{"label", screw.label},
                    {"hole", screw.hole},
                    {"kind", models::name_of(screw.kind)},
                    {"size", screw.size.designation},
                    {"cortices", screw.cortices},
                    {"at", point_json(placement.head_top)},
                    {"along", point_json(placement.direction)},
                    {"tip", point_json(placement.tip)}});
  }
  return json;
}

Json head_json(const models::ResultState& state) {
  static constexpr std::array<std::pair<const char*, const char*>, 7> kinds{{{"HOLDS", "holds"},
                                                                             {"FAILS", "fails"},
                                                                             {"NOT TO BE TRUSTED", "not_trusted"},
                                                                             {"NOT KNOWN", "limit"},
                                                                             {"LARGE AXIAL LOAD", "limit"},
                                                                             {"LIMIT", "limit"},
                                                                             {"ESTIMATE", "estimate"}}};
  Json json = Json::array();
  for (const auto& sentence : state_sentences(state, in_page))
    for (const auto& [word, kind] : kinds)
      if (sentence.starts_with(word)) json.push_back({{"kind", kind}, {"text", sentence}});
  return json;
}

Json along_plate_json(const models::LoadFindings& load) {
  Json json{{"load", load.load}};
  const auto list = [&](const char* key, const auto& value) {
    Json& numbers = json[key] = Json::array();
    for (const auto& station : load.plate.stations) numbers.push_back(value(station).value());
  };
  list("along_mm", [](const auto& s) { return s.along; });
  list("top_mpa", [](const auto& s) { return s.surface_top; });
  list("bottom_mpa", [](const auto& s) { return s.surface_bottom; });
  list("normal_n", [](const auto& s) { return s.normal; });
  list("bending_flat_n_mm", [](const auto& s) { return s.bending_flat; });
  list("bending_edge_n_mm", [](const auto& s) { return s.bending_edge; });
  list("torsion_n_mm", [](const auto& s) { return s.torsion; });
  return json;
}

Json quick_load_json(SolvedState& state, std::size_t l, models::Force after_steps) {
  const auto& assembly = state.assembly();
  const auto& loaded = state.loads()[l];
  models::LoadFindings findings;
  findings.face = models::measure_face(assembly, loaded);
  const auto underside = models::measure_underside(assembly, loaded);
  Json json{{"load", assembly.loads[l].name},
            {"gap", gap_json(models::measure_gap(assembly, state.steps().back(), loaded))},
            {"face", face_json(findings.face)},
            {"screws", Json::array()},
            {"plate_pressure_n", underside.pressure.value()}};
  put(json, "plate_clearance_mm", underside.clearance);
  put(json, "friction_use", underside.friction_use);
  if (after_steps > 0.0 * models::newton) json["force_left"] = (findings.face.force / after_steps).value();
  for (const auto& screw : models::measure_screws(assembly, state.in_place(), models::demanded(loaded).solution)) {
    json["screws"].push_back(screw_json(screw));
    for (const char* key : {"head_cycle", "thread_cycle"})
      json["screws"].back().erase(key);  // worked out with the whole
  }
  return json;
}

std::size_t position(const Json& wanted, const char* key, std::size_t count) {
  const Json& value = wanted[key];
  if (!value.is_number_unsigned() || value.get<std::size_t>() >= count)
    throw RequestError(
        fmt::format("a field is wanted of {} {}, counted from 0; there are {}", key, value.dump(), count));
  return value.get<std::size_t>();
}

}  // namespace

void put_read(Json& answer, SolvedState& state) {
  const models::Construct& construct = state.construct();
  answer["warnings"] = Json::array();
  for (const auto& warning : state.file().warnings) answer["warnings"].push_back(warning.message);
  answer["assumptions"] = state.file().assumptions;
  answer["screws"] = screws_json(state);
  answer["steps"] = Json::array();
  for (const auto& step : state.procedure().steps)
    answer["steps"].push_back({{"text", models::describe(step, state.procedure(), construct)}});
  answer["loads"] = Json::array();
  for (const auto& load : construct.loads)
    answer["loads"].push_back(
        {{"load", load.name}, {"acts", models::acting_parts(load)}, {"supports", models::supports_text(load)}});
  const auto& tissue = only(construct.fractures).tissue;
  answer["tissue"] =
      tissue ? Json{{"name", tissue->name}, {"modulus_mpa", tissue->youngs_modulus.value()}} : Json(nullptr);
  const auto review = models::review(construct);
  answer["review"] = review_json(review);
  answer["rules_broken"] = models::broken_rules(review);
}

void put_quick(Json& answer, SolvedState& state) {
  state.take_whole_bodies();
  constexpr bool with_stress = false;  // that comes with the margins
  const auto steps = models::measure_steps(state.assembly(), state.procedure(), state.steps(), with_stress);
  const models::Force after_steps = steps.back().face.force;
  models::CompressionFindings compression;
  compression.steps = steps;
  Json quick{{"stiffness", stiffness_json(models::measure_stiffness(state.assembly(), state.steps().back()))},
             {"steps", compression_json(compression)["steps"]},
             {"loads", Json::array()}};
  for (auto& step : quick["steps"]) step.erase("plate_peak_mpa");
  for (std::size_t l = 0; l < state.loads().size(); ++l)
    quick["loads"].push_back(quick_load_json(state, l, after_steps));
  answer["quick"] = quick;
}

void put_findings(Json& answer, SolvedState& state, models::Extent extent, bool with_race) {
  const models::Construct& construct = state.construct();
  const auto& [analysis, assessment] = state.assessed(extent, with_race);
  const models::Findings& findings = analysis.findings;
  answer["figures"] =
      figures_json(models::outcome_of(findings, construct, assessment.margins, assessment.review), construct);
  const CaseOrigin origin{state.file().file, state.file().text, state.file().assumptions, {}};
  answer["findings"] = findings_document(construct, findings, assessment, origin);
  answer["head"] = head_json(assessment.state);
  answer["verdict"] = assessment_sentences(construct, assessment, in_page);
  answer["worst"] = worst_things(findings);
  answer["order"] = order_sentences(findings);
  answer["pressing"] = compression_sentences(findings, widest_sentence);
  answer["along_plate"] = Json::array();
  for (const auto& load : findings.loads) answer["along_plate"].push_back(along_plate_json(load));
}

void put_fields(Json& answer, SolvedState& state, const Json& wanted, ByteBlock& bytes) {
  answer["fields"] = Json::array();
  for (const auto& one : wanted) {
    if (one.contains("load")) {
      const std::size_t load = position(one, "load", state.construct().loads.size());
      answer["fields"].push_back(field_json(state.load_fields(load), bytes));
      answer["fields"].back()["load"] = load;
    } else if (one.contains("step")) {
      const std::size_t step = position(one, "step", state.procedure().steps.size());
      answer["fields"].push_back(field_json(state.step_fields(step), bytes));
      answer["fields"].back()["step"] = step;
    } else {
      throw RequestError("a field is wanted of a \"load\" or a \"step\", by its position");
    }
  }
}

}  // namespace gapstrain::cases
