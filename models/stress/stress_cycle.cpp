#include "models/stress/stress_cycle.h"

#include "solver/bodies/stress.h"

namespace gapstrain::models {

StressCycle stress_cycle(const Eigen::Vector3d& at_rest, const Eigen::Vector3d& loaded) {
  const Eigen::RowVector3d half_range = 0.5 * (loaded - at_rest).transpose();
  const Eigen::Vector3d mean = 0.5 * (loaded + at_rest);
  return {solver::von_mises(half_range)(0) * mpa, (mean(0) + mean(1)) * mpa, (at_rest(0) + at_rest(1)) * mpa};
}

}  // namespace gapstrain::models
