// Three-node shell: MITC3+ bending and shear, ANDES membrane with drilling rotations (alpha_b = 1, so that it
// passes the patch test together with the quad). Lee, Lee & Bathe 2014; Felippa 2003.
#pragma once

#include "solver/elements/shell_material.h"

#include <Eigen/Core>

namespace gapstrain::solver {

// Unknowns as in QuadShape.
struct TriangleShape {
  Eigen::Matrix3d nodes;      // one node a row, mid-surface, mm
  Eigen::Matrix3d directors;  // one node a row, unit
  Eigen::Vector3d thickness;  // mm
  Eigen::Vector3d axis_1;     // material axis 1 after projection on the tangent plane
};

using TriangleMatrix = Eigen::Matrix<double, 18, 18>;
using TriangleStressRows = Eigen::Matrix<double, 3, 18>;

// Stiffness, N/mm and N mm/rad. @throw std::invalid_argument when the Jacobian is not positive.
TriangleMatrix triangle_stiffness(const TriangleShape& shape, const ShellMaterial& material);

// (s11, s22, s12) in material axes, MPa, at the centroid; zeta in [-1, 1], 1 on the director's side.
TriangleStressRows triangle_stress(const TriangleShape& shape, const ShellMaterial& material, double zeta);

// Geometric stiffness of a constant membrane force N = (n11, n22, n12) in material axes, N/mm, as the quad's.
Eigen::Matrix3d triangle_geometric_stiffness(const TriangleShape& shape, const Eigen::Vector3d& membrane_force);

// Mid-surface area, mm^2.
double triangle_area(const TriangleShape& shape);

}  // namespace gapstrain::solver
