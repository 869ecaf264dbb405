// What to change where a rule is broken.
#include "models/parts/words.h"
#include "models/words/counted.h"
#include "models/words/rule_words.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

using Sentences = std::vector<std::string>;

std::string joined(const Sentences& sentences) { return fmt::format("{}", fmt::join(sentences, " ")); }

std::vector<std::string> hole_numbers(const std::vector<int>& holes) {
  std::vector<std::string> words;
  for (const int hole : holes) words.push_back(fmt::format("{}", hole));
  return words;
}

// @pre the rule is broken
struct RuleAdvice {
  const RuleFinding& finding;

  double value() const { return finding.value.value(); }
  double least() const { return finding.least.value(); }
  double most() const { return finding.most.value(); }

  std::string operator()(const std::monostate&) const { return ""; }

  std::string operator()(const TreatmentBasis& basis) const {
    const std::string pressing = names_of(basis.pressing);
    if (!basis.simple)
      return fmt::format("Leave {} out, or make it a screw that only holds: pressing shortens a comminuted bone.",
                         pressing);
    if (basis.pressing.empty())
      return "Press the fracture: a compression screw, a fracture clamp closed before the plate locks, or a lag "
             "screw. In a gap this narrow the same motion strains the tissue most.";
    const bool is_one = basis.pressing.size() == 1;
    return fmt::format(
        "Reduce the fragments to a gap of at most {:.3g} mm before {} {}, or bridge the fracture without {}.",
        basis.reach.value().value(), pressing, is_one ? "presses" : "press", is_one ? "it" : "them");
  }

  std::string operator()(const BridgedGapBasis&) const {
    return fmt::format(
        "Bring the fragments {:.3g} mm closer, to a gap of {:g} mm or less; if the {:.3g} mm are a zone of "
        "pieces, "
        "enter the fracture as comminuted.",
        value() - most(), most(), value());
  }

  std::string operator()(const PrebendBasis&) const {
    if (value() < least())
      return fmt::format(
          "Bend the plate over the fracture until it stands {:g} to {:g} mm off the bone there; without, it "
          "presses "
          "the near cortex and the far one gapes. A thick plate may need less: the analysis' sufficient prebend, "
          "and its stress after the steps, tell.",
          least(), most());
    return fmt::format(
        "Take the prebend back to {:g} to {:g} mm: more of it presses the far cortex alone and bends the plate "
        "for "
        "good.",
        least(), most());
  }

  std::string operator()(const SpanBasis& basis) const {
    const double needed = basis.needed.value().value();
    if (needed < basis.bone.value()) return fmt::format("Choose a plate of at least {:.0f} mm.", needed);
    return fmt::format(
        "A ratio of {:.0f} takes {:.0f} mm and the bone is {:.3g} mm long: choose the longest plate it takes, and "
        "{}.",
        least(), needed, basis.bone.value(),
        basis.simple ? "press the fracture with lag screws" : "support the plate, as by a rod");
  }

  std::string operator()(const DensityBasis& basis) const {
    return fmt::format(
        "Choose a plate with at least {} holes for these {} screws{}.", basis.holes_needed, basis.filled,
        basis.leave_empty ? fmt::format(", or leave {} of the filled holes empty", *basis.leave_empty) : "");
  }

  std::string operator()(const StandoffBasis& basis) const {
    return basis.straight
               ? fmt::format("Bend the plate to the bone near hole {}: it stands {:.3g} mm too far off there.",
                             basis.hole, value() - most())
               : fmt::format("Bring the plate {:.3g} mm closer to the bone before it is locked.",
                             value() - most());
  }

  std::string operator()(const CountBasis& basis) const {
    const int missing = static_cast<int>(least()) - basis.bicortical, single = basis.screws - basis.bicortical;
    const int longer = std::min(missing, single);
    std::string advice;
    if (longer > 0)
      advice = fmt::format("Let {} reach the far cortex",
                           longer == 1 ? "one more screw" : counted(longer, "more screw"));
    if (missing > longer)
      advice += fmt::format("{} {} in {}", advice.empty() ? "Add" : " and add", counted(missing - longer, "screw"),
                            fragment_name(basis.fragment));
    return advice + ".";
  }

  std::string operator()(const UnicorticalBasis& basis) const {
    return fmt::format("Let {} reach the far cortex: a ball head holds by its thread's pull alone.",
                       names_of(basis.others));
  }

  std::string operator()(const EmptyHolesBasis& basis) const {
    if (!basis.simple) {
      Sentences sentences;
      const auto fill = [&](std::size_t fragment, const std::optional<int>& hole) {
        if (hole)
          sentences.push_back(
              fmt::format("In {} put a screw in hole {}, the nearest that is clear of the fracture.",
                          fragment_name(fragment), *hole));
      };
      fill(0, basis.nearest_usable_proximal);
      fill(1, basis.nearest_usable_distal);
      return joined(sentences);
    }
    if (value() < least())
      return fmt::format(
          "Move the innermost screws outward, out of hole {} or {}, until {:g} holes over the fracture are empty.",
          basis.innermost_proximal, basis.innermost_distal, least());
    return fmt::format(
        "Move the innermost screws, in holes {} and {}, nearer to the fracture until no more than {:g} holes over "
        "it are empty.",
        basis.innermost_proximal, basis.innermost_distal, most());
  }

  std::string operator()(const SpreadBasis& basis) const {
    Sentences sentences;
    const auto move = [&](std::size_t fragment, const FragmentSpread& spread) {
      if (spread.move_out_to)
        sentences.push_back(
            fmt::format("Move a screw of {} out to hole {}.", fragment_name(fragment), *spread.move_out_to));
      if (!spread.move_in_to.empty())
        sentences.push_back(fmt::format("Move a screw of {} in to hole {}.", fragment_name(fragment),
                                        listed(hole_numbers(spread.move_in_to), "or")));
    };
    move(0, basis.proximal);
    move(1, basis.distal);
    return joined(sentences);
  }

  std::string operator()(const EdgeBasis& basis) const {
    const double missing = (basis.needed - basis.distance).value();
    return basis.of_fracture
               ? fmt::format("Move or tilt {} at least {:.2g} mm away from the fracture, or leave hole {} empty.",
                             name_of(basis.screw), missing, basis.screw.hole)
               : fmt::format(
                     "Tilt {} away from the joint, move the plate at least {:.2g} mm, or leave hole {} empty.",
                     name_of(basis.screw), missing, basis.screw.hole);
  }

  std::string operator()(const ThreadBasis& basis) const {
    return fmt::format(
        "Use screws of at most {:.1f} mm there{}.", std::floor(10.0 * most() * basis.width.value()) / 10.0,
        basis.is_beyond ? fmt::format(": above {:.0f} % the hole itself weakens the bone, filled or, "
                                      "later, empty",
                                      100.0 * basis.never_above)
                        : "");
  }

  std::string operator()(const TiltBasis& basis) const {
    return fmt::format("Turn {} back to {:.3g} deg or less; what the maker allows may be less still.",
                       names_of(basis.beyond), most());
  }

  std::string operator()(const BendBasis& basis) const {
    return fmt::format("Leave hole {} empty, put a ball-headed screw in it, or bend the plate less there.",
                       basis.screw.hole);
  }

  std::string operator()(const OrderBasis& basis) const {
    const TooEarly& first = basis.mishaps.front();
    Sentences sentences = {fmt::format("Insert {} after {}: {}.", names_of(first.early), event_text(first),
                                       basis.of_pressing ? "held already, the fragments do not come together"
                                                         : "once locked, the plate cannot be pulled onto the bone "
                                                           "there")};
    for (std::size_t k = 1; k < basis.mishaps.size(); ++k)
      sentences.push_back(
          fmt::format("Likewise {} after {}.", names_of(basis.mishaps[k].early), event_text(basis.mishaps[k])));
    return joined(sentences);
  }
};

}  // namespace

std::string advice_text(const RuleFinding& finding) {
  return finding.verdict == Verdict::broken ? std::visit(RuleAdvice{finding}, finding.basis) : "";
}

}  // namespace gapstrain::models
