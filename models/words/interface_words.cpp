#include "models/words/interface_words.h"

#include "models/margins/part_name.h"

#include <fmt/format.h>

namespace gapstrain::models {

namespace {

std::string day_words(const FirstDay& day) {
  if (day.standing == Standing::not_trusted) return "not to be trusted";
  std::string words = day.standing == Standing::holds ? "holds" : "FAILS";
  if (day.least) words += fmt::format(", least margin {:.3g} ({})", day.least->factor, part_name(*day.least));
  if (day.gap_strain) words += fmt::format(", gap strain up to {:.2g} %", 100.0 * *day.gap_strain);
  return words;
}

}  // namespace

std::string interface_name(double stiffness) {
  if (stiffness == bonded_interface) return "bonded to bone";
  return fmt::format("{} in bone ({:g} of the bonded stiffness)", stiffness > soft_interface ? "softer" : "soft",
                     stiffness);
}

std::string bounds_verdict_words(BoundsVerdict verdict) {
  switch (verdict) {
    case BoundsVerdict::holds_at_both:
      return "it holds at both bounds of screws in bone";
    case BoundsVerdict::hangs_on_it:
      return "whether it holds hangs on how bone holds its screws";
    case BoundsVerdict::fails_at_both:
      return "it fails at both bounds of screws in bone";
    case BoundsVerdict::unknown:
      break;
  }
  return "it is not known at both bounds of screws in bone";
}

std::string bounds_sentence(const InterfaceBounds& bounds) {
  const std::string taken = bounds.taken == bonded_interface ? ", as taken here, a bound" : ", a bound";
  std::string verdict = bounds_verdict_words(bounds.verdict());
  return fmt::format("On the first day, screws {}{}: {}; {}: {}. So {}.", interface_name(bonded_interface), taken,
                     day_words(bounds.bonded.day), interface_name(bounds.soft.stiffness),
                     day_words(bounds.soft.day), verdict);
}

std::string softening_sentence(const std::vector<InterfaceWeek>& softening) {
  std::string weeks;
  for (const auto& [week, bound] : softening)
    weeks += fmt::format("; {} ({:.3g} of the bonded stiffness) {}",
                         week == 0.0 ? std::string("on the first day") : fmt::format("in week {:.3g}", week),
                         bound.stiffness, day_words(bound.day));
  return fmt::format(
      "as stated by the case, no published course: with the gap as on the first day{}. A race takes the interface "
      "of "
      "each week, with union in the middle of its weeks",
      weeks);
}

std::string softening_in_short(const std::vector<InterfaceWeek>& softening) {
  const InterfaceWeek *least = nullptr, &last = softening.back();
  for (const auto& stage : softening) {
    const auto& margin = stage.bound.day.least;
    if (margin && (least == nullptr || margin->factor < least->bound.day.least->factor)) least = &stage;
  }
  return fmt::format("as stated by the case, from {:.3g} of the bonded stiffness to {:.3g} in week {:.3g}{}",
                     softening.front().bound.stiffness, last.bound.stiffness, last.week,
                     least == nullptr ? std::string{}
                                      : fmt::format("; the least margin of its weeks is {:.3g}, in week {:.3g}",
                                                    least->bound.day.least->factor, least->week));
}

std::string soft_bound_warning(const InterfaceBounds& bounds) {
  const FirstDay& day = bounds.soft.day;
  std::string screws = fmt::format("with screws {}", interface_name(bounds.soft.stiffness));
  if (day.standing == Standing::not_trusted)
    return fmt::format("{} the calculation fails its own checks: whether it holds there is not known", screws);
  if (!day.least) return screws;
  return fmt::format("{} {} bears {:.2g} of what it is asked{}", screws, part_name(*day.least), day.least->factor,
                     is_of_all_loads(day.least->kind) ? "" : fmt::format(", under \"{}\"", day.least->load));
}

std::string soft_bound_warning_in_short(const InterfaceBounds& bounds) {
  const FirstDay& day = bounds.soft.day;
  if (day.standing == Standing::not_trusted || !day.least) return "with screws soft in bone it is not known";
  return fmt::format("with screws soft in bone {}", part_name(*day.least));
}

}  // namespace gapstrain::models
