#include "cases/answers/figures_json.h"

#include "cases/text/digits.h"
#include "models/catalogue/outcome_figures.h"

#include <algorithm>
#include <string>

namespace gapstrain::cases {

namespace {

Json figure_json(const models::FigureEntry& entry, double value) {
  const auto [unit, scale] = models::shown_in(entry.unit);
  std::string label = entry.compared.label;
  if (label.empty()) {
    label = entry.name;
    std::replace(label.begin(), label.end(), '_', ' ');
  }
  return {{"name", entry.name},       {"label", label},
          {"meaning", entry.meaning}, {"unit", models::unit_text(entry.unit)},
          {"value", value},           {"shown", three_digits(scale * value)},
          {"shown_unit", unit}};
}

}  // namespace

Json figures_json(const models::Outcome& outcome, const models::Construct& construct) {
  Json json = Json::array();
  for (const auto& entry : models::construct_figures())
    if (const auto value = entry.read(outcome)) json.push_back(figure_json(entry, *value));
  for (const auto& entry : models::load_figures()) {
    if (const auto worst = models::figure(outcome, entry.name)) json.push_back(figure_json(entry, *worst));
    for (std::size_t l = 0; l < outcome.loads.size(); ++l)
      if (const auto value = entry.read(outcome.loads[l])) {
        json.push_back(figure_json(entry, *value));
        json.back()["load"] = construct.loads[l].name;
      }
  }
  return json;
}

}  // namespace gapstrain::cases
