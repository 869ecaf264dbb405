#include "cases/page/layouts_cloud.h"

#include "cases/answers/case_edits.h"
#include "cases/page/cloud_json.h"
#include "models/parts/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace gapstrain::cases {

namespace {

// As Layouts makes its candidates: the case's own screw, else one like the first of its kind.
Json screw_table(const Json& own_tables, const models::Construct& construct, const models::Screw& candidate) {
  const auto& screws = construct.screws;
  const auto table_of_first = [&](const auto& is_meant) -> std::optional<Json> {
    const auto found = std::find_if(screws.begin(), screws.end(), is_meant);
    if (found == screws.end()) return std::nullopt;
    return own_tables.at(static_cast<std::size_t>(found - screws.begin()));
  };
  if (auto own = table_of_first([&](const models::Screw& screw) { return screw.id == candidate.id; })) return *own;
  Json table = table_of_first([&](const models::Screw& screw) { return screw.kind == candidate.kind; }).value();
  table["label"] = candidate.label;
  table["hole"] = candidate.hole;
  for (const char* key : {"tilt_along", "tilt_across"}) table.erase(key);
  return table;
}

std::string limit_words(const models::LayoutRules& rules) {
  return rules.limits.empty() ? "" : "within the limits of the case's [layouts]";
}

}  // namespace

Json layouts_cloud(const std::filesystem::path& folder, const Json& entered, const models::Construct& construct,
                   const models::Layouts& layouts, const LayoutReport& report) {
  const models::LayoutRules& rules = *construct.layouts;
  CloudRows rows;
  rows.table = folder / StudyFolder::final_name;
  rows.noun = "layouts";
  for (const auto& load : construct.loads) rows.loads.push_back(load.name);
  rows.axes = {CloudAxis{rules.front[0].figure, rules.front[0].most},
               CloudAxis{rules.front[1].figure, rules.front[1].most}};
  rows.keeps = report.keeps;
  rows.front = report.front;
  rows.best = report.best;
  rows.own = layouts.own();
  rows.limits = limit_words(rules);
  const auto shown = shown_rows(layouts.size(), asked_rows(rows));
  Json json = cloud_json(rows, shown);
  const Json own_tables = screw_tables(entered);
  json["screws"] = json["chosen"] = Json::array();
  for (const auto& candidate : layouts.candidates())
    json["screws"].push_back(screw_table(own_tables, construct, candidate));
  for (const std::size_t row : shown) json["chosen"].push_back(layouts.chosen(row));
  if (entered.contains("step")) json["steps"] = entered["step"];
  json["labels"] = Json::array();  // of the case's own screws, which its steps name
  for (const auto& table : own_tables) json["labels"].push_back(table["label"]);
  return json;
}

}  // namespace gapstrain::cases
