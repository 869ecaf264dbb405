#include "cases/outputs/json/findings_json.h"

#include "cases/cautions.h"
#include "cases/files/program_json.h"
#include "cases/outputs/json/compression_json.h"
#include "cases/outputs/json/findings_keys.h"
#include "cases/outputs/json/load_json.h"
#include "cases/outputs/json/margins_json.h"
#include "cases/outputs/json/plan_json.h"
#include "cases/outputs/json/race_json.h"
#include "cases/outputs/json/review_json.h"
#include "cases/outputs/json/state_json.h"
#include "cases/text/text_hash.h"

#include <fmt/format.h>

#include <cmath>

namespace gapstrain::cases {

namespace {

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
  json["construct"] = construct(findings);
  json["stiffness"] = stiffness_json(findings.stiffness);
  json["compression"] = compression_json(findings.compression);
  json["loads"] = Json::array();
  for (std::size_t l = 0; l < findings.loads.size(); ++l)
    json["loads"].push_back(load_json(findings.loads[l], l < of.loads.size() ? &of.loads[l] : nullptr));
  json["margins"] = margins_json(of, assessment.margins);
  json["margins_left_out"] = left_out_json(assessment.margins_left_out);
  json["review"] = review_json(assessment.review);
  json["plan"] = plan_json(assessment.plan);
  if (assessment.race) json["race"] = race_json(*assessment.race);
  if (assessment.no_race) json["no_race"] = no_race_json(*assessment.no_race);
}

}  // namespace

Json findings_document(const models::Construct& construct, const models::Findings& findings,
                       const models::Assessment& assessment, const CaseOrigin& origin) {
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
  std::vector<std::string> not_finite;
  drop_not_finite(json, "", not_finite);
  json["not_finite"] = not_finite;
  return json;
}

std::string findings_json(const models::Construct& construct, const models::Findings& findings,
                          const models::Assessment& assessment, const CaseOrigin& origin,
                          const std::vector<std::string>& files) {
  Json json = findings_document(construct, findings, assessment, origin);
  const Json not_finite = json["not_finite"];
  json.erase("not_finite");
  json["files"] = files;
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
