#include "cases/page/sweep_cloud.h"

#include "cases/answers/case_json.h"
#include "cases/answers/solved_state.h"
#include "cases/files/read_table.h"
#include "cases/page/cloud_json.h"
#include "cases/study/study_folder.h"
#include "cases/study/sweep_table.h"

#include <fmt/format.h>

#include <algorithm>

namespace gapstrain::cases {

namespace {

struct Touch {
  int degree = 0;
  std::string why_not{};
};

// Whether the state can be solved on these bodies, and whether its row was.
Touch touch_of(const StudyFile& study, const SweepRows& rows, std::size_t row,
               const std::shared_ptr<const models::PreparedBodies>& prepared) {
  try {
    CaseFile file = study.at(row);
    const models::Construct construct = file.construct;
    const SolvedState state(std::move(file), prepared);
    const bool is_same = models::have_same_bodies(prepared->construct, prepared->candidates, construct,
                                                  rows.candidates_for(construct));
    return {is_same ? 2 : 1};
  } catch (const NotPreparedError& error) {
    return {0, error.what()};
  } catch (const CaseError& error) {
    return {0, error.problems.empty() ? error.what() : error.problems.front().message};
  }
}

Json path_json(const CasePath& path) {
  Json steps = Json::array();
  for (const auto& step : path.steps) {
    steps.push_back({{"name", step.name}});
    if (step.index) steps.back()["index"] = *step.index;
  }
  return steps;
}

std::string axis_label(const Variable& variable) {
  std::string label = variable.name;
  std::replace(label.begin(), label.end(), '_', ' ');
  return label;
}

}  // namespace

Json sweep_cloud(const std::filesystem::path& folder, const StudyFile& study, const SweepRows& sweep,
                 const std::shared_ptr<const models::PreparedBodies>& prepared,
                 const std::function<void(double)>& reached) {
  CloudRows rows;
  rows.table = folder / StudyFolder::final_name;
  rows.noun = "rows";
  for (const auto& load : study.base.construct.loads) rows.loads.push_back(load.name);
  for (const auto& variable : study.variables)
    if (variable.is_numeric())
      rows.inputs.push_back({variable_column(variable), axis_label(variable), variable.unit});
  for (const auto& state : read_texts(rows.table, "state")) rows.keeps.push_back(state == "ok" ? 1 : 0);
  auto asked = asked_findings(study);
  if (asked.size() < 2) asked = {"peak_stress", "gap_strain"};
  rows.axes = {CloudAxis{asked[0]}, CloudAxis{asked[1]}};
  const bool starts_varied = !rows.inputs.empty();
  if (starts_varied) rows.axes = {CloudAxis{rows.inputs.front().column}, CloudAxis{asked[0]}};
  const auto shown = shown_rows(study.rows(), {});
  Json json = cloud_json(rows, shown);

  json["variables"] = json["settings"] = json["touch"] = json["why"] = Json::array();
  json["whys"] = Json::object();
  json["entered"] = to_json(study.base_tree);
  for (const auto& variable : study.variables) {
    Json paths = Json::array();
    for (const auto& path : variable.paths) paths.push_back(path_json(path));
    json["variables"].push_back({{"label", axis_label(variable)}, {"unit", variable.unit}, {"paths", paths}});
    json["settings"].push_back(Json::array());
  }
  for (std::size_t place = 0; place < shown.size(); ++place) {
    const auto settings = study.settings(shown[place]);
    for (std::size_t k = 0; k < settings.size(); ++k)
      json["settings"][k].push_back({settings[k].text, to_json(settings[k].value)});
    const Touch touch = touch_of(study, sweep, shown[place], prepared);
    json["touch"].push_back(touch.degree);
    if (!touch.why_not.empty()) {
      auto& why = json["why"];
      auto found = std::find(why.begin(), why.end(), touch.why_not);
      if (found == why.end()) {
        why.push_back(touch.why_not);
        found = why.end() - 1;
      }
      json["whys"][std::to_string(place)] = found - why.begin();
    }
    if (reached && place % 64 == 0) reached(static_cast<double>(place) / static_cast<double>(shown.size()));
  }
  return json;
}

}  // namespace gapstrain::cases
