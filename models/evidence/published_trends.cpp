#include "models/evidence/published_lists.h"

namespace gapstrain::models {

const std::vector<Trend>& published_trends() {
  static const std::vector<Trend> trends = [] {
    std::vector<Trend> all;
    for (auto list : {published_on_working_length(), published_on_screws(), published_on_plates()})
      for (auto& trend : list) all.push_back(std::move(trend));
    return all;
  }();
  return trends;
}

}  // namespace gapstrain::models
