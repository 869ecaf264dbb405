#include "cases/outputs/json/review_json.h"

namespace gapstrain::cases {

namespace {

const char* verdict_name(models::Verdict verdict) {
  switch (verdict) {
    case models::Verdict::kept:
      return "kept";
    case models::Verdict::broken:
      return "broken";
    case models::Verdict::not_applicable:
      break;
  }
  return "not applicable";
}

}  // namespace

Json review_json(const std::vector<models::RuleFinding>& findings) {
  Json json = Json::array();
  for (const auto& finding : findings) {
    Json entry{{"rule", finding.rule},
               {"verdict", verdict_name(finding.verdict)},
               {"bound", finding.bound},
               {"figure", finding.figure},
               {"source", finding.source}};
    if (!finding.advice.empty()) entry["advice"] = finding.advice;
    json.push_back(entry);
  }
  return json;
}

}  // namespace gapstrain::cases
