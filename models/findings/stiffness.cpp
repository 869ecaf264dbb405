#include "models/findings/stiffness.h"

#include "models/findings/solve.h"

namespace gapstrain::models {

StiffnessFindings measure_stiffness(const Assembly& assembly, const ConstructState& made) {
  // Motion of the distal end section against the proximal one under unit load number `load`.
  const auto relative = [&](std::size_t load, Eigen::Index motion) {
    const solver::Solution solution = solve_small_load(assembly, made, assembly.stiffness_loads[load]);
    const auto end = [&](const Ring& ring) {
      return solution.motions[static_cast<std::size_t>(ring.place.body)](ring.place.column + motion, 0);
    };
    return end(assembly.load_ports.distal_end) - end(assembly.load_ports.proximal_end);
  };
  StiffnessFindings stiffness;
  stiffness.axial = 1.0 * newton / (-relative(0, 0) * mm);
  stiffness.bending_y = 1.0 * newton_mm / (relative(1, 4) * radian);
  stiffness.bending_z = 1.0 * newton_mm / (relative(2, 5) * radian);
  stiffness.torsion = 1.0 * newton_mm / (relative(3, 3) * radian);
  return stiffness;
}

double compliance(const AssembledLoad& load, const solver::Solution& made, const solver::Solution& loaded) {
  double work = 0.0;
  for (std::size_t b = 0; b < load.forces.size(); ++b)
    work += load.forces[b].cwiseProduct(loaded.motions[b] - made.motions[b]).sum();
  return work;
}

}  // namespace gapstrain::models
