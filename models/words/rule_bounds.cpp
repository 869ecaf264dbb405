// What rules ask. Every number comes from the finding, and so from the rule.
#include "models/words/counted.h"
#include "models/words/rule_words.h"

#include <fmt/format.h>

namespace gapstrain::models {

namespace {

struct RuleBound {
  const RuleFinding& finding;

  double least() const { return finding.least.value(); }
  double most() const { return finding.most.value(); }

  std::string operator()(const std::monostate&) const { return ""; }

  std::string operator()(const TreatmentBasis& basis) const {
    if (!basis.simple) return "a comminuted zone is bridged, not pressed";
    if (finding.least) return fmt::format("a simple fracture closed to {:g} mm is pressed together", least());
    return fmt::format("what presses comes to a gap of at most {:g} mm", most());
  }

  std::string operator()(const BridgedGapBasis&) const { return fmt::format("at most {:g} mm", most()); }

  std::string operator()(const PrebendBasis&) const {
    return fmt::format("{:g} to {:g} mm over a transverse fracture that the plate presses", least(), most());
  }

  std::string operator()(const SpanBasis& basis) const {
    return fmt::format("at least {:g} to {:g} for a {} fracture", least(), *finding.ample,
                       basis.simple ? "simple" : "comminuted");
  }

  std::string operator()(const DensityBasis&) const { return fmt::format("at most {:g} when bridging", most()); }
  std::string operator()(const StandoffBasis&) const { return fmt::format("at most {:g} mm", most()); }

  std::string operator()(const CountBasis& basis) const {
    return fmt::format("{:g} to {:g} through both cortices when {}", least(), *finding.ample,
                       basis.bridged ? "bridging" : "pressed");
  }

  std::string operator()(const UnicorticalBasis&) const { return "only locking ones, in good bone"; }

  std::string operator()(const EmptyHolesBasis& basis) const {
    return basis.simple ? fmt::format("{:g} to {:g} empty over a simple fracture", least(), most())
                        : "screws as close as possible to a comminuted zone";
  }

  std::string operator()(const SpreadBasis&) const {
    const int left_out = static_cast<int>(most());
    return fmt::format("near and far in each fragment, at most {} hole{} left out at either end",
                       in_letters(left_out), left_out == 1 ? "" : "s");
  }

  std::string operator()(const EdgeBasis& basis) const {
    return fmt::format("at least {:g} thread diameters{}", least(), basis.of_fracture ? " from axis to edge" : "");
  }

  std::string operator()(const ThreadBasis& basis) const {
    return fmt::format("at most {:.0f} % of the width square to the screw, never above {:.0f} %", 100.0 * most(),
                       100.0 * basis.never_above);
  }

  std::string operator()(const TiltBasis&) const {
    return fmt::format("at most {:.3g} deg from square to the plate", most());
  }

  std::string operator()(const BendBasis&) const { return fmt::format("at most {:g} deg", most()); }

  std::string operator()(const OrderBasis& basis) const {
    return basis.of_pressing
               ? "before the step that presses, the sliding fragment is not held and the two are not both locked"
               : "in each fragment no screw locks before those that press the plate onto the bone";
  }
};

}  // namespace

std::string bound_text(const RuleFinding& finding) { return std::visit(RuleBound{finding}, finding.basis); }

}  // namespace gapstrain::models
