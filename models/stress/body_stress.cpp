#include "models/stress/body_stress.h"

#include "solver/bodies/stress.h"

#include <utility>

namespace gapstrain::models {

std::vector<BodyStress> read_stress(const solver::Shell& shell, const Eigen::MatrixXd& displacements) {
  const Eigen::MatrixXd top = solver::node_stress(shell, displacements, 1.0);
  const Eigen::MatrixXd bottom = solver::node_stress(shell, displacements, -1.0);
  std::vector<BodyStress> all;
  for (Eigen::Index load = 0; load < displacements.cols(); ++load) {
    BodyStress stress{solver::as_rows(top.col(load)), {}, solver::as_rows(bottom.col(load))};
    // On a wall without much curvature the stress is linear through the thickness.
    stress.middle = 0.5 * (stress.top + stress.bottom);
    all.push_back(std::move(stress));
  }
  return all;
}

}  // namespace gapstrain::models
