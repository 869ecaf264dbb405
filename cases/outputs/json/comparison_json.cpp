#include "cases/outputs/json/comparison_json.h"

#include "cases/cautions.h"
#include "cases/files/json_value.h"
#include "cases/files/program_json.h"
#include "cases/outputs/json/margins_json.h"
#include "cases/outputs/json/race_json.h"
#include "cases/outputs/json/review_json.h"
#include "cases/outputs/sentences/state_lines.h"

#include <cmath>

namespace gapstrain::cases {

namespace {

Json figure_json(const models::ComparedFigure& figure) {
  Json json{{"figure", figure.name}, {"unit", figure.unit}, {"values", Json::array()}};
  for (const auto& value : figure.values) json["values"].push_back(value ? Json(*value) : Json(nullptr));
  if (const auto ratio = figure.ratio(); ratio && std::isfinite(*ratio)) json["ratio"] = *ratio;
  json["model_error"] = figure.model_error;
  json["told_apart"] = figure.is_told_apart();
  if (const auto best = figure.best()) json["best"] = letter_of(*best);
  return json;
}

Json pair_json(const models::ConstructPair& pair) {
  Json json{{"first", letter_of(pair.first)}, {"second", letter_of(pair.second)}, {"races", Json::array()}};
  for (const auto& race : pair.races) json["races"].push_back(race_comparison_json(race));
  return json;
}

Json case_json(const ComparedCase& one, std::size_t index) {
  const auto& assessment = one.assessed.assessment;
  Json json{{"letter", letter_of(index)},
            {"name", one.construct.name},
            {"file", one.file},
            {"state", state_json(assessment.state)},
            {"trustworthy", assessment.state.not_trusted.empty()},
            {"margins", margins_json(assessment.margins)},
            {"margins_left_out", assessment.margins_left_out},
            {"review", review_json(assessment.review)}};
  if (assessment.race) json["race"] = race_json(*assessment.race);
  put(json, "no_race", assessment.no_race);
  return json;
}

}  // namespace

std::string comparison_json(const std::vector<ComparedCase>& cases, const models::Comparison& comparison,
                            const models::Preference& preference, const std::vector<std::string>& files) {
  Json json;
  json["program"] = program_json();
  json["cautions"] = cautions;
  json["preference"] = {{"verdict", preference.verdict}, {"reasons", preference.reasons}};
  if (preference.preferred) json["preference"]["construct"] = letter_of(*preference.preferred);
  json["verdict"] = comparison.verdict;
  json["constructs"] = Json::array();
  for (std::size_t k = 0; k < cases.size(); ++k) json["constructs"].push_back(case_json(cases[k], k));
  json["figures"] = Json::array();
  for (const auto& figure : comparison.figures) json["figures"].push_back(figure_json(figure));
  json["pairs"] = Json::array();
  for (const auto& pair : comparison.pairs) json["pairs"].push_back(pair_json(pair));
  json["files"] = files;
  return json.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace gapstrain::cases
