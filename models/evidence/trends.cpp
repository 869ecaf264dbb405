#include "models/evidence/trends.h"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <utility>

namespace gapstrain::models {

TrendFinding judge(const Trend& trend, std::vector<Measure> measures, const std::vector<std::string>& doubts) {
  TrendFinding finding{std::move(measures), Agreement::not_comparable, trend.otherwise};
  if (!doubts.empty()) {
    finding.why = fmt::format("Our own model fails a check: {}", fmt::join(doubts, "; "));
    return finding;
  }
  const auto is_bounded = [](const Measure& measure) { return measure.least || measure.most; };
  if (std::none_of(finding.measures.begin(), finding.measures.end(), is_bounded)) return finding;
  const bool all_hold = std::all_of(finding.measures.begin(), finding.measures.end(),
                                    [](const Measure& measure) { return measure.holds(); });
  finding.verdict = all_hold ? Agreement::agrees : Agreement::disagrees;
  if (all_hold) finding.why = trend.if_agrees;
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
    auto measures = trend.measure ? trend.measure(benches) : std::vector<Measure>{};
    findings[*next] = judge(trend, std::move(measures), benches.take_doubts());
  }
  return findings;
}

}  // namespace gapstrain::models
