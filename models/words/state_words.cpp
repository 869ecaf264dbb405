#include "models/words/state_words.h"

#include "models/words/margin_words.h"
#include "models/words/race_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace gapstrain::models {

namespace {

std::string not_finite_text(const NotFinite& not_finite) {
  return fmt::format("{} figures came out as no finite number, the first is {}", not_finite.figures,
                     not_finite.first);
}

}  // namespace

std::string failed_part(const Failure& failure) {
  if (const Margin* margin = failure.margin()) return part_name(*margin);
  return std::get<LostRace>(failure.what).by_screws ? "screws, fatigue" : "plate, fatigue";
}

std::string failure_time(const FailureTime& when) {
  switch (when.kind) {
    case FailureTime::Kind::at_first_load:
      return "at the first such load";
    case FailureTime::Kind::in_race:
      return weeks_text(when.from.value(), when.to);
    case FailureTime::Kind::before_union:
      return "before union";
    case FailureTime::Kind::before_union_unhealed:
      return "before union, if the gap stays as on the first day";
    case FailureTime::Kind::as_screws_soften:
      return fmt::format("from week {:.3g} on, as screws soften in bone", when.from.value_or(0.0));
    case FailureTime::Kind::before_cycles_asked:
      break;
  }
  return "before the cycles asked are reached";
}

std::string failure_sentence(const Construct& construct, const Failure& failure) {
  if (const Margin* margin = failure.margin()) return margin_sentence(construct, *margin);
  const auto& race = std::get<LostRace>(failure.what);
  return fmt::format("In {:.0f} % of the samples {} before union.", 100.0 * race.breaks_before_union,
                     race.by_screws ? "screws break" : "the plate breaks");
}

std::string check_text(const Check& check) {
  return fmt::format("{}: {:.4g}, limit {:.3g}", check.name, check.value, check.limit);
}

std::string second_order_sentence(const std::vector<LoadOnBent>& loads) {
  constexpr std::size_t most = 2;
  std::vector<LoadOnBent> hardest = loads;
  std::stable_sort(hardest.begin(), hardest.end(),
                   [](const auto& a, const auto& b) { return a.load_ratio > b.load_ratio; });
  std::string text;
  for (std::size_t k = 0; k < std::min(most, hardest.size()); ++k)
    text += fmt::format(
        "{}under \"{}\" the axial load is {:.2g} % of the one that buckles the construct, slopes "
        "grow by {:.2g} %",
        k == 0 ? "" : "; ", hardest[k].load, 100.0 * hardest[k].load_ratio,
        100.0 * (hardest[k].amplification - 1.0));
  if (hardest.size() > most) text += fmt::format("; {} more loads", hardest.size() - most);
  return fmt::format("second-order effects are in the figures: {}", text);
}

std::string turned_sentence(const std::vector<LoadTurned>& loads) {
  const auto furthest =
      std::max_element(loads.begin(), loads.end(), [](const auto& a, const auto& b) { return a.turn < b.turn; });
  return fmt::format(
      "parts are followed as they turn, by up to {:.2g} rad under \"{}\"{}; what is left linear within a part "
      "turns by {:.2g} rad at most",
      furthest->turn.value(), furthest->load,
      loads.size() > 1 ? fmt::format(" and {} more", loads.size() - 1) : std::string{}, furthest->within.value());
}

std::string doubt_sentence(const Doubt& doubt) {
  if (const auto* not_finite = std::get_if<NotFinite>(&doubt)) return not_finite_text(*not_finite);
  const auto& check = std::get<Check>(doubt);
  return fmt::format("{}; it should hold that {}", check_text(check), check.meaning);
}

std::string doubt_name(const Doubt& doubt) {
  if (const auto* not_finite = std::get_if<NotFinite>(&doubt)) return not_finite_text(*not_finite);
  const std::string& name = std::get<Check>(doubt).name;
  return name.substr(0, name.find(':'));
}

}  // namespace gapstrain::models
