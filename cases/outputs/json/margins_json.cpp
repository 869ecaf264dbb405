#include "cases/outputs/json/margins_json.h"

namespace gapstrain::cases {

Json margins_json(const std::vector<models::Margin>& margins) {
  Json json = Json::array();
  for (const auto& margin : margins)
    json.push_back({{"part", margin.part},
                    {"load", margin.load},
                    {"factor", margin.factor},
                    {"sentence", margin.sentence},
                    {"assumed", margin.assumed},
                    {"source", margin.source},
                    {"indicative", margin.indicative}});
  return json;
}

}  // namespace gapstrain::cases
