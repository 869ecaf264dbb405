#include "models/layouts/solver_at_bounds.h"

#include "models/assembly/screw_interface.h"
#include "models/catalogue/outcome_figures.h"
#include "models/findings/model_error.h"

namespace gapstrain::models {

namespace {

SoftScrews read_soft(const Outcome& outcome) {
  if (!outcome.doubts.empty()) return {};
  return {outcome.margins.least(), figure(outcome, "gap_strain")};
}

}  // namespace

std::optional<Assembly> assemble_soft(const std::shared_ptr<const PreparedBodies>& prepared,
                                      const Construct& construct, const std::vector<Screw>& candidates) {
  const double soft = soft_bound_of(construct);
  if (soft == construct.screw_interface) return std::nullopt;
  return assemble(prepared, with_interface(construct, soft), candidates);
}

SolverAtBounds::SolverAtBounds(const Assembly& assembly, const Assembly* soft, const PeakStress& peak)
    : taken_(assembly, peak) {
  if (soft != nullptr) soft_.emplace(*soft, peak, StiffnessOf::nothing);
}

Outcome SolverAtBounds::solve(const std::vector<int>& chosen) {
  Outcome outcome = taken_.solve(chosen);
  if (!soft_) {
    outcome.soft_screws = read_soft(outcome);
    return outcome;
  }
  try {
    outcome.soft_screws = read_soft(soft_->solve(chosen));
  } catch (const ModelError&) {  // the construct as it is taken stands
  }
  return outcome;
}

}  // namespace gapstrain::models
