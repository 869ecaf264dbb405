#include "models/measures/stiffness.h"

#include "models/measures/solve.h"

namespace gapstrain::models {

StiffnessFindings measure_stiffness(const Assembly& assembly, const ConstructState& made) {
  std::array<double, 4> work{};
  for (std::size_t k = 0; k < work.size(); ++k) {
    const AssembledLoad& load = assembly.stiffness_loads[k];
    const solver::Solution answer = solve_small_load(assembly, made, load);
    for (std::size_t b = 0; b < load.forces.size(); ++b)
      work[k] += load.forces[b].cwiseProduct(answer.motions[b]).sum();
  }
  return stiffness_of(work);
}

StiffnessFindings stiffness_of(const std::array<double, 4>& work) {
  StiffnessFindings stiffness;
  stiffness.axial = 1.0 / work[0] * (newton / mm);
  stiffness.bending_y = 1.0 / work[1] * (newton_mm / radian);
  stiffness.bending_z = 1.0 / work[2] * (newton_mm / radian);
  stiffness.torsion = 1.0 / work[3] * (newton_mm / radian);
  return stiffness;
}

double work_on(const AssembledLoad& load, const Eigen::VectorXd& forces, const Eigen::VectorXd& amplitudes) {
  return load.alone.work(0) - load.alone.deformations.col(0).dot(forces) +
         load.alone.resultants.col(0).dot(amplitudes);
}

}  // namespace gapstrain::models
