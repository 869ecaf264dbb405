#include "cases/page/figure_trust.h"

#include "models/catalogue/assessed_figures.h"

#include <set>
#include <string>

namespace gapstrain::cases {

namespace {

// Against three-dimensional solids, see tests/PROOF.md; of lives see models/catalogue/figure_entry.h.
std::string source_of(const models::FigureEntry& entry) {
  using models::ErrorOf, models::FigureGroup;
  if (entry.name.starts_with("breaks_") || entry.name == "rules_broken") return "counted on the case";
  switch (entry.compared.error_of) {
    case ErrorOf::stiffness:
    case ErrorOf::stress:
      return "finite elements, held against solids";
    case ErrorOf::life:
      return "finite elements and fatigue lines";
    case ErrorOf::nothing:
      break;
  }
  static const std::set<std::string> of_the_case{"working_length", "screws_proximal",     "screws_distal",
                                                 "screws",         "plate_screw_density", "plate_span_ratio"};
  return of_the_case.contains(entry.name) ? "counted on the case" : "finite elements, error not known";
}

}  // namespace

Json figure_trust() {
  Json json = Json::object();
  for (const auto& name : models::figure_names()) {
    const models::FigureEntry& entry = models::catalogue_entry(name);
    Json& one = json[name] = {{"source", source_of(entry)}};
    if (const double error = models::model_error_of(entry.compared.error_of); error > 0.0) one["error"] = error;
  }
  return json;
}

}  // namespace gapstrain::cases
