#include "cases/outputs/json/review_json.h"

#include "models/words/rule_words.h"

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
               {"bound", models::bound_text(finding)},
               {"figure", models::figure_text(finding)},
               {"source", finding.source}};
    if (const auto advice = models::advice_text(finding); !advice.empty()) entry["advice"] = advice;
    put(entry, "value", finding.value);
    put(entry, "least", finding.least);
    put(entry, "most", finding.most);
    put(entry, "ample", finding.ample);
    if (const auto unit = models::unit_text(finding.unit); !unit.empty()) entry["unit"] = unit;
    if (const auto parts = models::parts_of(finding); !parts.empty()) {
      entry["parts"] = Json::array();
      for (const auto& part : parts) entry["parts"].push_back(models::name_of(part));
    }
    json.push_back(entry);
  }
  return json;
}

}  // namespace gapstrain::cases
