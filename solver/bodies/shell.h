// An elastic shell body before it is factored: mesh, material and the direction of its material axis.
#pragma once

#include "mesh/shell_mesh.h"
#include "solver/elements/shell_material.h"
#include "solver/elements/shell_quad.h"
#include "solver/elements/shell_triangle.h"

#include <Eigen/Core>

#include <memory>

namespace gapstrain::solver {

struct Shell {
  std::shared_ptr<const mesh::ShellMesh> mesh;
  ShellMaterial material;
  Eigen::Vector3d axis_1 = Eigen::Vector3d::UnitX();  // material axis 1 after projection on the wall

  // Unknowns: six a node, u then theta, in global axes.
  Eigen::Index unknowns() const { return 6 * mesh->nodes.rows(); }
};

QuadShape quad_shape(const Shell& shell, const mesh::Quad& cell);
TriangleShape triangle_shape(const Shell& shell, const mesh::Triangle& cell);

}  // namespace gapstrain::solver
