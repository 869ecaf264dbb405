#include "cases/outputs/json/comparison_json.h"

#include "cases/cautions.h"
#include "cases/files/json_value.h"
#include "cases/files/program_json.h"
#include "cases/outputs/json/comparison_keys.h"
#include "cases/outputs/json/margins_json.h"
#include "cases/outputs/json/race_json.h"
#include "cases/outputs/json/review_json.h"
#include "cases/outputs/json/state_json.h"
#include "models/margins/part_name.h"
#include "models/words/comparison_words.h"
#include "models/words/preference_words.h"

#include <cmath>

namespace gapstrain::cases {

namespace {

Json figure_json(const models::ComparedFigure& figure) {
  Json json{{"figure", figure.name}};
  if (figure.entry != nullptr) {
    json["name"] = figure.entry->name;
    json["meaning"] = figure.entry->meaning;
  }
  json["unit"] = figure.unit;
  json["values"] = Json::array();
  for (const auto& value : figure.values) json["values"].push_back(value ? Json(*value) : Json(nullptr));
  if (const auto ratio = figure.ratio(); ratio && std::isfinite(*ratio)) json["ratio"] = *ratio;
  json["model_error"] = figure.model_error;
  json["told_apart"] = figure.is_told_apart();
  if (const auto best = figure.best()) json["best"] = letter_of(*best);
  return json;
}

Json pair_json(const models::ConstructPair& pair, const std::vector<std::string>& names) {
  Json json{{"first", letter_of(pair.first)}, {"second", letter_of(pair.second)}, {"races", Json::array()}};
  for (const auto& race : pair.races)
    json["races"].push_back(race_comparison_json(race, names[pair.first], names[pair.second]));
  return json;
}

Json case_json(const ComparedCase& one, std::size_t index) {
  const auto& assessment = one.assessed.assessment;
  Json json{{"letter", letter_of(index)},
            {"name", one.construct.name},
            {"file", one.file},
            {"state", state_json(one.construct, assessment.state)},
            {"trustworthy", assessment.state.not_trusted.empty()},
            {"margins", margins_json(one.construct, assessment.margins)},
            {"margins_left_out", left_out_json(assessment.margins_left_out)},
            {"review", review_json(assessment.review)}};
  if (assessment.race) json["race"] = race_json(*assessment.race);
  if (assessment.no_race) json["no_race"] = no_race_json(*assessment.no_race);
  return json;
}

const char* ground_key(models::PreferenceGround ground) {
  switch (ground) {
    case models::PreferenceGround::none_is_trusted:
      return "none_is_trusted";
    case models::PreferenceGround::none_holds:
      return "none_holds";
    case models::PreferenceGround::none_judged_holds:
      return "none_judged_holds";
    case models::PreferenceGround::holds_alone:
      return "holds_alone";
    case models::PreferenceGround::outlasts_others:
      return "outlasts_others";
    case models::PreferenceGround::most_in_hand:
      return "most_in_hand";
    case models::PreferenceGround::breaks_fewer_rules:
      return "breaks_fewer_rules";
    case models::PreferenceGround::alike:
      break;
  }
  return "alike";
}

Json preference_json(const models::Preference& preference, const std::vector<std::string>& names) {
  Json json{{"verdict", models::preference_sentence(preference, names)},
            {"reasons", models::preference_reasons(preference, names)}};
  if (preference.preferred) json["construct"] = letter_of(*preference.preferred);
  json["ground"] = ground_key(preference.ground);
  put(json, "outlasts", preference.outlasts);
  json["broken_rules"] = preference.broken_rules;
  return json;
}

// Of the margins that are known of all constructs, the construct that has most in hand and the one that has least.
Json least_margins_json(const models::LeastMargins& least) {
  Json json = Json::object();
  json["incomplete"] = Json::array();
  for (const std::size_t k : least.incomplete) json["incomplete"].push_back(letter_of(k));
  if (!least.ends) return json;
  const auto end = [](const models::LeastMargins::One& one) {
    return Json{{"construct", letter_of(one.construct)},
                {"part", models::part_name(one.margin)},
                {"load", one.margin.load},
                {"factor", one.margin.factor}};
  };
  json["most"] = end(least.ends->most);
  json["least"] = end(least.ends->least);
  json["ratio"] = least.ends->ratio;
  json["told_apart"] = least.ends->told_apart;
  return json;
}

}  // namespace

std::string comparison_json(const std::vector<ComparedCase>& cases, const models::Comparison& comparison,
                            const models::Preference& preference, const std::vector<std::string>& files) {
  Json json;
  json["program"] = program_json();
  json["cautions"] = cautions;
  const auto names = names_of(cases);
  json["preference"] = preference_json(preference, names);
  json["verdict"] = models::comparison_verdict(compared(cases), comparison);
  json["least_margins"] = least_margins_json(comparison.least_margins);
  json["constructs"] = Json::array();
  for (std::size_t k = 0; k < cases.size(); ++k) json["constructs"].push_back(case_json(cases[k], k));
  json["figures"] = Json::array();
  for (const auto& figure : comparison.figures) json["figures"].push_back(figure_json(figure));
  json["pairs"] = Json::array();
  for (const auto& pair : comparison.pairs) json["pairs"].push_back(pair_json(pair, names));
  json["files"] = files;
  json["keys"] = keys_json(comparison_keys());
  return json.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace gapstrain::cases
