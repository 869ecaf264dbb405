#include "models/assessment/preference.h"

#include <algorithm>
#include <utility>

namespace gapstrain::models {

namespace {

constexpr double nearly_always = 0.95;  // share of samples in which one outlasts the other, as bands are given

using Indices = std::vector<std::size_t>;

class Chooser {
 public:
  Chooser(const std::vector<AssessedConstruct>& assessed, const Comparison& comparison)
      : assessed_(assessed), comparison_(comparison) {}

  Preference choose() const {
    const Indices trusted = with([](Standing standing) { return standing != Standing::not_trusted; });
    const Indices holding = with([](Standing standing) { return standing == Standing::holds; });
    Preference found;
    if (trusted.empty())
      found.ground = PreferenceGround::none_is_trusted;
    else if (holding.empty())
      found.ground =
          trusted.size() == assessed_.size() ? PreferenceGround::none_holds : PreferenceGround::none_judged_holds;
    else if (holding.size() == 1)
      prefer(holding.front(), PreferenceGround::holds_alone, found);
    else
      choose_among(holding, found);
    found.standings = standings();
    for (std::size_t k = 0; k < assessed_.size(); ++k) found.broken_rules.push_back(count_broken(k));
    return found;
  }

 private:
  template <class Condition>
  Indices with(Condition condition) const {
    Indices found;
    for (std::size_t k = 0; k < assessed_.size(); ++k)
      if (condition(assessed_[k].assessment.state.standing())) found.push_back(k);
    return found;
  }

  static void prefer(std::size_t k, PreferenceGround ground, Preference& found) {
    found.preferred = k;
    found.ground = ground;
  }

  void choose_among(const Indices& holding, Preference& found) const {
    if (const auto longest = outlasting(holding)) {
      prefer(*longest, PreferenceGround::outlasts_others, found);
      found.outlasts = least_share(*longest, holding);
    } else if (const auto strongest = with_largest_margin(holding)) {
      prefer(*strongest, PreferenceGround::most_in_hand, found);
    } else if (const auto customary = with_fewest_broken_rules(holding)) {
      prefer(*customary, PreferenceGround::breaks_fewer_rules, found);
    }
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

  std::size_t count_broken(std::size_t k) const { return broken_rules(assessed_[k].assessment.review).size(); }

  std::optional<std::size_t> with_fewest_broken_rules(const Indices& holding) const {
    const auto fewer = [&](std::size_t a, std::size_t b) { return count_broken(a) < count_broken(b); };
    const std::size_t best = *std::min_element(holding.begin(), holding.end(), fewer);
    const bool is_alone = std::all_of(holding.begin(), holding.end(), [&](std::size_t k) {
      return k == best || count_broken(best) < count_broken(k);
    });
    return is_alone ? std::optional(best) : std::nullopt;
  }

  // Those that do not hold first.
  std::vector<ConstructStanding> standings() const {
    std::vector<ConstructStanding> all;
    for (std::size_t k = 0; k < assessed_.size(); ++k) {
      const ResultState& state = assessed_[k].assessment.state;
      ConstructStanding one{k, state.standing()};
      if (const Margin* least = least_margin_of(k)) one.least = *least;
      if (!state.fails.empty()) one.failure = state.fails.front();
      if (state.interface) one.bounds = state.interface->verdict();
      all.push_back(std::move(one));
    }
    std::stable_sort(all.begin(), all.end(), [](const ConstructStanding& a, const ConstructStanding& b) {
      return a.standing > b.standing;
    });
    return all;
  }

  const std::vector<AssessedConstruct>& assessed_;
  const Comparison& comparison_;
};

}  // namespace

Preference find_preference(const std::vector<AssessedConstruct>& assessed, const Comparison& comparison) {
  return Chooser(assessed, comparison).choose();
}

}  // namespace gapstrain::models
