#include "models/measures/second_order_effects.h"

namespace gapstrain::models {

double small_turn_error(double turn) { return 0.5 * turn * turn; }

SecondOrderFindings findings_of(const solver::SecondOrder& found) {
  SecondOrderFindings findings;
  findings.load_ratio = found.load_ratio;
  if (found.is_in() && (!found.turns || found.amplification != 1.0)) findings.amplification = found.amplification;
  findings.residual = found.residual;
  if (const auto& turns = found.turns)
    findings.large = {turns->turn * radian, turns->within * radian, turns->residual, turns->settled};
  return findings;
}

double work_on_added(const Assembly& assembly, const AssembledLoad& load, const solver::SecondOrder& found) {
  double work = 0.0;
  for (std::size_t b = 0; b < found.forces.size(); ++b)
    work += load.forces[b].cwiseProduct(assembly.bodies[b].condensed->compliance * found.forces[b]).sum();
  return work;
}

}  // namespace gapstrain::models
