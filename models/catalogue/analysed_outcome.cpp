#include "models/catalogue/analysed_outcome.h"

#include "models/measures/screw_forces.h"

#include <algorithm>

namespace gapstrain::models {

namespace {

void add_screw(const ScrewFindings& findings, const Construct& construct, LoadOutcome& out) {
  out.screw_pull = std::max(out.screw_pull, findings.axial);
  if (findings.factor_to_yield)
    out.screw_to_yield =
        std::min(out.screw_to_yield.value_or(*findings.factor_to_yield), *findings.factor_to_yield);
  const Screw* screw = find_screw(construct.screws, findings.screw);
  if (screw == nullptr) return;
  for (const auto& cut : findings.stations)
    out.screw_stress = std::max(out.screw_stress, core_stress(cut, screw->size) * mpa);
}

LoadOutcome outcome_of_load(const LoadFindings& findings, const Construct& construct) {
  LoadOutcome out;
  out.peak_stress = findings.plate.peak.von_mises;
  out.peak_hole = findings.plate.peak.hole;
  const auto& yield = only(construct.plates).material.yield_strength;
  if (yield && out.peak_stress > 0.0 * mpa) out.plate_to_yield = *yield / out.peak_stress;
  if (findings.plate.fatigue) out.plate_cycle = findings.plate.fatigue->cycle;
  out.axial_strain = findings.gap.axial_strain;
  if (findings.gap.shear_strain) out.shear_strain = findings.gap.shear_strain->max;
  out.closed = findings.gap.windows.closed;
  out.near_motion = findings.gap.near.axial_motion;
  out.far_motion = findings.gap.far.axial_motion;
  out.largest_motion = findings.gap.largest_motion;
  for (const auto& screw : findings.screws) add_screw(screw, construct, out);
  out.across = findings.face.force;
  out.plate_pressure = findings.plate_pressure;
  out.plate_clearance = findings.plate_clearance;
  out.second_order = findings.second_order;
  return out;
}

// The least of each kind that is seen well enough.
MarginFactors factors_of(const std::vector<Margin>& margins) {
  const auto least = [&](MarginKind kind, MarginKind or_kind) -> std::optional<double> {
    for (const auto& margin : margins)  // worst first
      if ((margin.kind == kind || margin.kind == or_kind) && !margin.indicative) return margin.factor;
    return std::nullopt;
  };
  MarginFactors factors;
  factors.plate_yield = least(MarginKind::plate_yield, MarginKind::plate_yield);
  factors.plate_fatigue = least(MarginKind::plate_fatigue, MarginKind::plate_fatigue_of_all_loads);
  factors.screw_yield = least(MarginKind::screw_yield, MarginKind::screw_yield);
  factors.screw_fatigue = least(MarginKind::screw_fatigue, MarginKind::screw_fatigue_of_all_loads);
  factors.screw_hold = least(MarginKind::screw_hold, MarginKind::screw_hold);
  return factors;
}

// In the order of rule_names, which a review is not in.
std::vector<bool> broken_of(const std::vector<RuleFinding>& review) {
  std::vector<bool> broken;
  for (const auto& name : rule_names())
    broken.push_back(std::any_of(review.begin(), review.end(), [&](const RuleFinding& finding) {
      return finding.rule == name && finding.verdict == Verdict::broken;
    }));
  return broken;
}

}  // namespace

Outcome outcome_of(const Findings& findings, const Construct& construct, const std::vector<Margin>& margins,
                   const std::vector<RuleFinding>& review) {
  Outcome outcome;
  outcome.figures = findings.figures;
  outcome.stiffness = findings.stiffness;
  for (const auto& load : findings.loads) outcome.loads.push_back(outcome_of_load(load, construct));
  outcome.margins = factors_of(margins);
  outcome.broken_rules = broken_of(review);
  for (const auto& check : findings.trust.checks)
    if (!check.passed) outcome.doubts.push_back(check);
  return outcome;
}

}  // namespace gapstrain::models
