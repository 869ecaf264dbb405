// Places on a meshed surface that a straight line meets.
#pragma once

#include "mesh/shell_mesh.h"
#include "solver/bodies/port.h"

#include <Eigen/Core>

#include <optional>
#include <vector>

namespace gapstrain::models {

// A place on the mid-surface as a weighted mean of nodes; weights add up to one.
struct SurfacePlace {
  std::vector<int> nodes;
  std::vector<double> weights;
  Eigen::Vector3d position;
  double along = 0.0;  // on the line, from its start
};

// All places where the line from `start` along `direction` (unit) meets the mesh, by rising `along`;
// quadrilaterals as two triangles. Empty when it misses.
std::vector<SurfacePlace> meet(const mesh::ShellMesh& mesh, const Eigen::Vector3d& start,
                               const Eigen::Vector3d& direction);

// On the outer surface of a bone's wall where the line leaves it for good: three translations. Nothing when it
// does not meet the wall beyond `start`.
std::optional<solver::Port> outer_port(const solver::Shell& bone, const Eigen::Vector3d& start,
                                       const Eigen::Vector3d& direction);

}  // namespace gapstrain::models
