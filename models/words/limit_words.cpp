#include "models/words/limit_words.h"

#include <fmt/format.h>

namespace gapstrain::models {

namespace {

std::string when_text(const PassedLimit& limit) {
  return limit.load ? fmt::format("under \"{}\"", *limit.load) : "once it is tightened";
}

}  // namespace

std::string limit_sentence(const PassedLimit& limit) {
  const std::string load = limit.load.value_or("");
  switch (limit.kind) {
    case LimitKind::pull_out:
    case LimitKind::core_yield:
      return fmt::format("{} carries {:.0f} N {}: {:.2g} times {}.", limit.label, limit.value, when_text(limit),
                         limit.times,
                         limit.kind == LimitKind::pull_out ? "what pulls its thread out of the bone"
                                                           : "what makes its core yield");
    case LimitKind::over_yield_by_steps:
      return fmt::format(
          "{}'s shaft is strained to {:.2g} times its yield by the steps alone: it would bend for good and press "
          "less than this calculation with elastic metals says.",
          limit.label, limit.times);
    case LimitKind::bent_by_steps:
      return fmt::format("{} yields while the construct is made: it stays bent by {:.2g} degrees.", limit.label,
                         limit.value);
    case LimitKind::bent_by_load:
      return fmt::format("{} yields under \"{}\": it stays bent by {:.2g} degrees more.", limit.label, load,
                         limit.value);
    case LimitKind::over_yield_by_load:
      return fmt::format("{}'s shaft is strained to {:.2g} times its yield under \"{}\".", limit.label,
                         limit.times, load);
    case LimitKind::preload_lost:
      return fmt::format(
          "{} loses its preload under \"{}\": its head would lift off its seat, which this calculation does not "
          "follow.",
          limit.label, load);
    case LimitKind::gap_gapes:
      return fmt::format(
          "The fracture gapes under \"{}\": {:.0f} % of its face still touches, and it opens by up to {:.2g} mm.",
          load, 100.0 * limit.touching, limit.value);
    case LimitKind::plate_slips:
      return fmt::format(
          "The plate slips by {:.2g} mm on the {} fragment under \"{}\": friction there is used up, and the "
          "screws' "
          "shafts carry the rest.",
          limit.value, limit.fragment > 0 ? "distal" : "proximal", load);
    case LimitKind::slot_used_up:
      return fmt::format("{} uses up its slot: {:.2g} mm of travel were asked for, hole {} leaves {:.2g} mm.",
                         limit.label, limit.value, limit.hole, limit.limit);
    case LimitKind::hold_left_in:
      break;
  }
  return fmt::format("{} is still in after the last step and carries load with the rest.", limit.label);
}

std::vector<std::string> limit_sentences(const std::vector<PassedLimit>& limits) {
  std::vector<std::string> sentences;
  for (const auto& limit : limits) sentences.push_back(limit_sentence(limit));
  return sentences;
}

}  // namespace gapstrain::models
