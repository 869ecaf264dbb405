#include "models/words/preference_words.h"

#include "models/margins/part_name.h"
#include "models/words/state_words.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <cmath>

namespace gapstrain::models {

namespace {

std::string prefer_none(PreferenceGround ground) {
  switch (ground) {
    case PreferenceGround::none_is_trusted:
      return "Prefer none: no construct's figures are to be trusted.";
    case PreferenceGround::none_holds:
      return "Prefer none: none holds.";
    case PreferenceGround::none_judged_holds:
      return "Prefer none: of those that can be judged none holds.";
    default:
      return "Neither is to be preferred: they differ by less than the model's own error.";
  }
}

std::string why_preferred(const Preference& preference) {
  switch (preference.ground) {
    case PreferenceGround::holds_alone:
      return "it alone holds";
    case PreferenceGround::outlasts_others:
      return fmt::format("its implants outlast the others' in {:.0f} % of the samples",
                         std::floor(100.0 * preference.outlasts.value()));
    case PreferenceGround::most_in_hand:
      return "it holds with the most in hand, beyond the model's own error";
    default:
      return "they hold alike, and it breaks fewer rules of the trade";
  }
}

// Only what turns the standing: the rest would say the same of all.
std::string bounds_hint(const ConstructStanding& one) {
  if (one.bounds == BoundsVerdict::unknown) return ", but with screws soft in bone that is not known";
  if (one.bounds != BoundsVerdict::hangs_on_it) return "";
  return one.standing == Standing::holds ? ", but with screws soft in bone it FAILS"
                                         : ", and holds at the other bound of screws in bone";
}

std::string standing_reason(const ConstructStanding& one, const std::string& name) {
  const auto& least = one.least;
  switch (one.standing) {
    case Standing::not_trusted:
      return fmt::format("\"{}\" is NOT TO BE TRUSTED.", name);
    case Standing::fails:
      return least && least->factor < 1.0
                 ? fmt::format("\"{}\" FAILS: {}; it would bear {:.0f} % of \"{}\"{}.", name, part_name(*least),
                               std::floor(100.0 * least->factor), least->load, bounds_hint(one))
                 : fmt::format("\"{}\" FAILS: {}{}.", name, failed_part(one.failure.value()), bounds_hint(one));
    case Standing::holds:
      break;
  }
  return least ? fmt::format("\"{}\" holds: least margin {:.2g}, {}{}.", name, least->factor, part_name(*least),
                             bounds_hint(one))
               : fmt::format("\"{}\" has no known margin.", name);
}

}  // namespace

std::string preference_sentence(const Preference& preference, const std::vector<std::string>& names) {
  if (!preference.preferred) return prefer_none(preference.ground);
  return fmt::format("Prefer \"{}\": {}.", names[*preference.preferred], why_preferred(preference));
}

std::vector<std::string> preference_reasons(const Preference& preference, const std::vector<std::string>& names) {
  constexpr std::size_t most_reasons = 3;
  std::vector<std::string> reasons;
  for (const auto& one : preference.standings)
    if (reasons.size() < most_reasons) reasons.push_back(standing_reason(one, names[one.construct]));
  if (reasons.size() == most_reasons) return reasons;
  std::vector<std::string> counts;
  for (std::size_t k = 0; k < names.size(); ++k)
    counts.push_back(fmt::format("\"{}\" {}", names[k], preference.broken_rules[k]));
  reasons.push_back(fmt::format("Rules of the trade broken: {}.", fmt::join(counts, ", ")));
  return reasons;
}

}  // namespace gapstrain::models
