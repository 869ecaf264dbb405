#include "models/findings/plate_clearance.h"

#include <cmath>

namespace gapstrain::models {

std::optional<Length> measure_plate_clearance(const Assembly& assembly,
                                              const std::array<Eigen::VectorXd, 3>& displacements) {
  // A place is over bone when a node of the bone is no further from it, across the plate's normal, than a cell.
  const double cell = assembly.bone_shape->perimeter() / 24.0;
  const mesh::ShellMesh& plate = *assembly.plate_mesh.mesh;
  std::optional<Length> least;
  for (const int node : assembly.plate_sample) {
    const Eigen::Vector3d normal = plate.directors.row(node).transpose();
    const Eigen::Vector3d underside = plate.nodes.row(node).transpose() - 0.5 * plate.thickness(node) * normal;
    Eigen::Vector3d bone_motion = Eigen::Vector3d::Zero();
    double nearest = cell * cell;
    for (const auto body : {proximal_body, distal_body}) {
      const Eigen::MatrixX3d& nodes = assembly.bodies[body].body->shell().mesh->nodes;
      for (Eigen::Index k = 0; k < nodes.rows(); ++k) {
        if (std::abs(nodes(k, 0) - underside.x()) > 2.0 * cell) continue;
        const Eigen::Vector3d arm = nodes.row(k).transpose() - underside;
        const double height = arm.dot(normal), across = arm.squaredNorm() - height * height;
        const bool is_below = height < 0.0 && -height < 4.0 * cell;
        if (!is_below || across >= nearest) continue;
        nearest = across;
        bone_motion = displacements[body].segment<3>(6 * k);
      }
    }
    if (nearest >= cell * cell) continue;
    const double at_rest = -assembly.bone_shape->depth(underside);
    const double under_load = at_rest + normal.dot(displacements[plate_body].segment<3>(6 * node) - bone_motion);
    if (!least || under_load < least->value()) least = under_load * mm;
  }
  return least;
}

}  // namespace gapstrain::models
