#include "models/measures/mesh_error.h"

#include "solver/bodies/stress.h"

#include <cmath>

namespace gapstrain::models {

namespace {

int hottest_node(const Assembly& assembly, const PlatePeak& peak) {
  const Eigen::RowVector2d place(peak.along.value(), peak.across.value());
  Eigen::Index node = 0;
  (only(assembly.plates).mesh.along_across.rowwise() - place).rowwise().squaredNorm().minCoeff(&node);
  return static_cast<int>(node);
}

// What is no number stays: an error that is not known is not small.
void take_larger(double& largest, double value) {
  if (std::isnan(value) || value > largest) largest = value;
}

}  // namespace

MeshError estimate_mesh_error(const Assembly& assembly, const SolvedLoads& solved,
                              const std::vector<LoadFindings>& loads) {
  const auto count = static_cast<Eigen::Index>(loads.size());
  Eigen::VectorXd difference = Eigen::VectorXd::Zero(count);
  for (std::size_t b = 0; b < assembly.bodies.size(); ++b)
    difference += solver::recovery_error_energy(assembly.bodies[b].body->shell(), solved.displacements[b]);

  MeshError error;
  for (Eigen::Index l = 0; l < count; ++l) {
    const auto k = static_cast<std::size_t>(l);
    const double stored =
        solver::energy_balance(*assembly.system, solved.states[k].pressed.solution, assembly.loads[k].forces)
            .stored(0);
    if (stored != 0.0) take_larger(error.stiffness, difference(l) / stored);
    const PlatePeak& peak = loads[k].plate.peak;
    const double zeta = peak.face == PlateFace::top ? 1.0 : peak.face == PlateFace::bottom ? -1.0 : 0.0;
    if (peak.von_mises.value() != 0.0)
      take_larger(error.peak, solver::stress_jump(assembly.bodies[only_plate_body].body->shell(),
                                                  solved.displacements[only_plate_body].col(l),
                                                  hottest_node(assembly, peak), zeta, peak.von_mises.value()));
  }
  return error;
}

}  // namespace gapstrain::models
