// Parts by name, and the figures of rules.
#include "models/words/rule_words.h"

#include "models/parts/words.h"
#include "models/rules/bounds.h"
#include "models/words/counted.h"

#include <fmt/format.h>

namespace gapstrain::models {

namespace {

std::string treatment_name(Treatment treatment) {
  switch (treatment) {
    case Treatment::compression:
      return "compression";
    case Treatment::neutralisation:
      return "lag screw and neutralisation plate";
    case Treatment::bridging:
      break;
  }
  return "bridging";
}

std::string reason_text(Inapplicable reason) {
  switch (reason) {
    case Inapplicable::no_locking_screw:
      return "no screw locks in the plate";
    case Inapplicable::comminuted:
      return "the fracture is comminuted";
    case Inapplicable::pressed:
      return "the fracture is pressed";
    case Inapplicable::plate_does_not_press:
      return "the plate does not press the fracture";
    case Inapplicable::oblique:
      return "the fracture is oblique";
    case Inapplicable::no_fracture_length:
      return "the fracture is closed and transverse: it has no length";
    case Inapplicable::lag_screws_hold:
      return "lag screws hold the fracture over its length";
    case Inapplicable::all_pass_both_cortices:
      return "all screws pass both cortices";
    case Inapplicable::no_plate_screw:
      return "no plate screw";
    case Inapplicable::fragment_without_screw:
      return "a fragment has no plate screw";
    case Inapplicable::no_screw_in_bone:
      return "no screw stays in the bone";
    case Inapplicable::nothing_presses:
      return "nothing presses the fracture";
    case Inapplicable::screws_not_mixed:
      break;
  }
  return "no fragment has screws of both kinds";
}

// "0.7 mm of gap, of which the slide of S5 can close 0.7 mm: 0 mm left"
std::string gap_left_text(const TreatmentBasis& basis, double left) {
  if (!(basis.slid > 0.0 * mm)) return fmt::format("{:.3g} mm of gap", basis.gap.value());
  return fmt::format("{:.3g} mm of gap, of which the slide of {} can close {:.3g} mm: {:.3g} mm left",
                     basis.gap.value(), names_of(basis.sliding), basis.slid.value(), left);
}

struct RuleFigure {
  const RuleFinding& finding;

  double value() const { return finding.value.value(); }

  std::string operator()(const std::monostate&) const { return ""; }

  std::string operator()(const TreatmentBasis& basis) const {
    if (!basis.simple)
      return fmt::format(
          "a comminuted zone of {:.3g} mm, {}", basis.gap.value(),
          basis.pressing.empty() ? "bridged" : fmt::format("on which {} pulls", names_of(basis.pressing)));
    const bool nothing_presses = finding.verdict == Verdict::broken && basis.pressing.empty();
    return fmt::format("{}: {}{}", treatment_name(basis.treatment), gap_left_text(basis, value()),
                       nothing_presses ? ", and nothing presses" : "");
  }

  std::string operator()(const BridgedGapBasis&) const { return fmt::format("{:.3g} mm", value()); }
  std::string operator()(const PrebendBasis&) const { return fmt::format("{:.3g} mm", value()); }

  std::string operator()(const SpanBasis& basis) const {
    return fmt::format("{:.3g} ({:.3g} mm of plate over {:.3g} mm of fracture along the bone{})", value(),
                       basis.plate.value(), basis.fracture.value(),
                       basis.oblique ? ", its obliquity included" : "");
  }

  std::string operator()(const DensityBasis& basis) const {
    return fmt::format("{:.2f} ({} of {} holes filled)", value(), basis.filled, basis.holes);
  }

  std::string operator()(const StandoffBasis& basis) const {
    return basis.straight ? fmt::format("up to {:.3g} mm, near hole {}", value(), basis.hole)
                          : fmt::format("{:.3g} mm", value());
  }

  std::string operator()(const CountBasis& basis) const {
    const int cortices = basis.screws + basis.bicortical;
    return fmt::format("{}, {}{}", counted(basis.screws, "screw"),
                       cortices == 1 ? "1 cortex" : fmt::format("{} cortices", cortices),
                       finding.verdict == Verdict::kept && basis.screws > *finding.ample
                           ? fmt::format("; more than {} add little", *finding.ample)
                           : "");
  }

  std::string operator()(const UnicorticalBasis& basis) const {
    if (basis.others.empty())
      return fmt::format("{}: look at the bone before trusting {}", names_of(basis.locking),
                         basis.locking.size() == 1 ? "it" : "them");
    return fmt::format("{} {} not lock", names_of(basis.others), basis.others.size() == 1 ? "does" : "do");
  }

  std::string operator()(const EmptyHolesBasis& basis) const {
    return fmt::format("{} empty; working length {:.3g} mm, {:.2g} bone diameters", value(),
                       basis.working_length.value(), basis.bone_diameters);
  }

  std::string operator()(const SpreadBasis& basis) const {
    return fmt::format("holes {} to {} in the proximal, {} to {} in the distal fragment", basis.proximal.from,
                       basis.proximal.to, basis.distal.from, basis.distal.to);
  }

  std::string operator()(const EdgeBasis& basis) const {
    return fmt::format("{:.3g} mm at {} ({:.2g} thread diameters)", basis.distance.value(), name_of(basis.screw),
                       value());
  }

  std::string operator()(const ThreadBasis& basis) const {
    return fmt::format("{:.3g} % at {} ({:.3g} mm in {:.3g} mm)", 100.0 * value(), name_of(basis.screw),
                       basis.thread.value(), basis.width.value());
  }

  std::string operator()(const TiltBasis& basis) const {
    std::string tilt =
        value() > 0.0 ? fmt::format("{:.3g} deg at {}", value(), name_of(basis.screw)) : "all are square";
    if (!basis.weakens) return tilt;
    return fmt::format("{}; heads of a fixed angle have lost most of their strength from {:g} deg on", tilt,
                       in_degrees(strength_loss_begins));
  }

  std::string operator()(const BendBasis& basis) const {
    if (!basis.is_bent) return "none";
    return fmt::format("{:.2g} deg at hole {} ({}), half-way to the holes beside it included", value(),
                       basis.screw.hole, name_of(basis.screw));
  }

  std::string operator()(const OrderBasis& basis) const {
    if (basis.mishaps.empty()) return "in order";
    const TooEarly& first = basis.mishaps.front();
    return fmt::format("{} {} in before {}{}", names_of(first.early), first.early.size() == 1 ? "is" : "are",
                       event_text(first), basis.has_steps ? "" : ", as the screws are listed: there are no steps");
  }
};

}  // namespace

std::string name_of(const RulePart& part) {
  if (!part.label.empty()) return part.label;
  return part.hole == 0 ? "the screw beside the plate" : fmt::format("the screw in hole {}", part.hole);
}

std::string names_of(const RuleParts& parts) {
  std::vector<std::string> names;
  for (const auto& part : parts) names.push_back(name_of(part));
  return listed(names);
}

std::string event_text(const TooEarly& mishap) {
  return fmt::format("{} is {}", name_of(mishap.before), mishap.is_clamp ? "closed" : "tightened");
}

std::string fragment_name(std::size_t fragment) {
  return fragment > 0 ? "the distal fragment" : "the proximal fragment";
}

std::string figure_text(const RuleFinding& finding) {
  const auto found = [&] { return std::visit(RuleFigure{finding}, finding.basis); };
  if (!finding.inapplicable) return found();
  const std::string reason = reason_text(*finding.inapplicable);
  return finding.value ? reason + "; " + found() : reason;
}

}  // namespace gapstrain::models
