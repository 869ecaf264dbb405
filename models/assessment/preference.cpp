#include "models/assessment/preference.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

constexpr double nearly_always = 0.95;  // share of samples in which one outlasts the other, as bands are given
constexpr std::size_t most_reasons = 3;

using Indices = std::vector<std::size_t>;

class Chooser {
 public:
  Chooser(const std::vector<Construct>& constructs, const std::vector<AssessedConstruct>& assessed,
          const Comparison& comparison)
      : constructs_(constructs), assessed_(assessed), comparison_(comparison) {}

  Preference choose() const {
    const Indices trusted = with([](Standing standing) { return standing != Standing::not_trusted; });
    const Indices holding = with([](Standing standing) { return standing == Standing::holds; });
    Preference found;
    if (trusted.empty())
      found.verdict = "Prefer none: no construct's figures are to be trusted.";
    else if (holding.empty())
      found.verdict = trusted.size() == assessed_.size() ? "Prefer none: none holds."
                                                         : "Prefer none: of those that can be judged none holds.";
    else if (holding.size() == 1)
      prefer(holding.front(), "it alone holds", found);
    else
      choose_among(holding, found);
    add_reasons(found);
    return found;
  }

 private:
  const std::string& name(std::size_t k) const { return constructs_[k].name; }

  template <class Condition>
  Indices with(Condition condition) const {
    Indices found;
    for (std::size_t k = 0; k < assessed_.size(); ++k)
      if (condition(assessed_[k].assessment.state.standing())) found.push_back(k);
    return found;
  }

  void prefer(std::size_t k, const std::string& why, Preference& found) const {
    found.preferred = k;
    found.verdict = fmt::format("Prefer \"{}\": {}.", name(k), why);
  }

  void choose_among(const Indices& holding, Preference& found) const {
    if (const auto longest = outlasting(holding))
      prefer(*longest,
             fmt::format("its implants outlast the others' in {:.0f} % of the samples",
                         std::floor(100.0 * least_share(*longest, holding))),
             found);
    else if (const auto strongest = with_largest_margin(holding))
      prefer(*strongest, "it holds with the most in hand, beyond the model's own error", found);
    else if (const auto customary = with_fewest_broken_rules(holding))
      prefer(*customary, "they hold alike, and it breaks fewer rules of the trade", found);
    else
      found.verdict = "Neither is to be preferred: they differ by less than the model's own error.";
  }

  // The share of samples in which the first's implants outlast the second's; nothing without a race of both.
  std::optional<double> outlasts(std::size_t first, std::size_t second) const {
    for (const auto& pair : comparison_.pairs)
      for (const auto& race : pair.races) {
        if (race.course != HealingCourse::governed) continue;
        if (pair.first == first && pair.second == second) return race.first_outlasts;
        if (pair.first == second && pair.second == first) return 1.0 - race.first_outlasts;
      }
    return std::nullopt;
  }

  // Against the one that comes nearest.
  double least_share(std::size_t k, const Indices& holding) const {
    double least = 1.0;
    for (const std::size_t other : holding)
      if (other != k) least = std::min(least, outlasts(k, other).value_or(0.0));
    return least;
  }

  std::optional<std::size_t> outlasting(const Indices& holding) const {
    for (const std::size_t k : holding)
      if (least_share(k, holding) >= nearly_always) return k;
    return std::nullopt;
  }

  const Margin* least_margin_of(std::size_t k) const { return least_margin(assessed_[k].assessment.margins); }

  std::optional<std::size_t> with_largest_margin(const Indices& holding) const {
    Indices sorted = holding;
    if (std::any_of(sorted.begin(), sorted.end(), [&](std::size_t k) { return least_margin_of(k) == nullptr; }))
      return std::nullopt;
    std::stable_sort(sorted.begin(), sorted.end(), [&](std::size_t a, std::size_t b) {
      return least_margin_of(a)->factor > least_margin_of(b)->factor;
    });
    const double ratio = least_margin_of(sorted[0])->factor / least_margin_of(sorted[1])->factor;
    if (ratio <= (1.0 + model_error_of_stress) / (1.0 - model_error_of_stress)) return std::nullopt;
    return sorted.front();
  }

  std::ptrdiff_t broken_rules(std::size_t k) const {
    const auto& rules = assessed_[k].assessment.review;
    return std::count_if(rules.begin(), rules.end(),
                         [](const RuleFinding& rule) { return rule.verdict == Verdict::broken; });
  }

  std::optional<std::size_t> with_fewest_broken_rules(const Indices& holding) const {
    const auto fewer = [&](std::size_t a, std::size_t b) { return broken_rules(a) < broken_rules(b); };
    const std::size_t best = *std::min_element(holding.begin(), holding.end(), fewer);
    const bool is_alone = std::all_of(holding.begin(), holding.end(), [&](std::size_t k) {
      return k == best || broken_rules(best) < broken_rules(k);
    });
    return is_alone ? std::optional(best) : std::nullopt;
  }

  std::string standing_reason(std::size_t k) const {
    const ResultState& state = assessed_[k].assessment.state;
    const Margin* least = least_margin_of(k);
    switch (state.standing()) {
      case Standing::not_trusted:
        return fmt::format("\"{}\" is NOT TO BE TRUSTED.", name(k));
      case Standing::fails:
        return least != nullptr && least->factor < 1.0
                   ? fmt::format("\"{}\" FAILS: {}; it would bear {:.0f} % of \"{}\".", name(k), least->part,
                                 std::floor(100.0 * least->factor), least->load)
                   : fmt::format("\"{}\" FAILS: {}.", name(k), state.fails.front().part);
      case Standing::holds:
        break;
    }
    return least == nullptr
               ? fmt::format("\"{}\" has no known margin.", name(k))
               : fmt::format("\"{}\" holds: least margin {:.2g}, {}.", name(k), least->factor, least->part);
  }

  // How each stands, those that do not hold first; then the rules broken.
  void add_reasons(Preference& found) const {
    Indices order(assessed_.size());
    for (std::size_t k = 0; k < order.size(); ++k) order[k] = k;
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
      return assessed_[a].assessment.state.standing() > assessed_[b].assessment.state.standing();
    });
    for (const std::size_t k : order)
      if (found.reasons.size() < most_reasons) found.reasons.push_back(standing_reason(k));
    if (found.reasons.size() == most_reasons) return;
    std::vector<std::string> counts;
    for (std::size_t k = 0; k < assessed_.size(); ++k)
      counts.push_back(fmt::format("\"{}\" {}", name(k), broken_rules(k)));
    found.reasons.push_back(fmt::format("Rules of the trade broken: {}.", fmt::join(counts, ", ")));
  }

  const std::vector<Construct>& constructs_;
  const std::vector<AssessedConstruct>& assessed_;
  const Comparison& comparison_;
};

}  // namespace

Preference find_preference(const std::vector<Construct>& constructs,
                           const std::vector<AssessedConstruct>& assessed, const Comparison& comparison) {
  return Chooser(constructs, assessed, comparison).choose();
}

}  // namespace gapstrain::models
