#include "models/evidence/trends.h"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <utility>

namespace gapstrain::models {

bool SetUpFinding::holds() const {
  return std::all_of(measures.begin(), measures.end(), [](const Measure& measure) { return measure.holds(); });
}

TrendFinding judge(const Trend& trend, std::vector<SetUpFinding> set_ups, const std::vector<std::string>& doubts) {
  TrendFinding finding{std::move(set_ups), Agreement::not_comparable, trend.otherwise};
  if (!doubts.empty()) {
    finding.why = fmt::format("Our own model fails a check: {}", fmt::join(doubts, "; "));
    return finding;
  }
  const auto& all = finding.set_ups;
  const auto is_bounded = [](const SetUpFinding& set_up) {
    return std::any_of(set_up.measures.begin(), set_up.measures.end(),
                       [](const Measure& measure) { return measure.is_bounded(); });
  };
  if (all.empty() || !std::all_of(all.begin(), all.end(), is_bounded)) return finding;
  const auto holding =
      std::count_if(all.begin(), all.end(), [](const SetUpFinding& set_up) { return set_up.holds(); });
  const bool is_all = holding == static_cast<std::ptrdiff_t>(all.size());
  finding.verdict = is_all ? Agreement::agrees : holding > 0 ? Agreement::hangs_on_guess : Agreement::disagrees;
  if (is_all) finding.why = trend.if_agrees;
  if (finding.why.empty()) finding.why = "No reason is known: this verdict was not met before.";
  return finding;
}

std::vector<TrendFinding> find_out(const std::vector<const Trend*>& trends, Benches& benches) {
  std::vector<std::size_t> order(trends.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return trends[a]->models < trends[b]->models; });
  std::vector<TrendFinding> findings(trends.size());
  for (auto next = order.begin(); next != order.end(); ++next) {
    std::vector<std::string_view> wanted;
    for (auto later = next; later != order.end(); ++later)
      wanted.insert(wanted.end(), trends[*later]->models.begin(), trends[*later]->models.end());
    benches.keep_only(wanted);
    const Trend& trend = *trends[*next];
    benches.take_doubts();
    std::vector<SetUpFinding> set_ups;
    for (const auto& set_up : trend.set_ups) set_ups.push_back({set_up.name, set_up.measure(benches)});
    findings[*next] = judge(trend, std::move(set_ups), benches.take_doubts());
  }
  return findings;
}

}  // namespace gapstrain::models
