// Four-node shell: MITC4 bending and shear, Allman-Hughes-Brezzi membrane with drilling rotations, thick-wall
// kinematics (Jacobian at every thickness point). Dvorkin & Bathe 1984; Ibrahimbegovic, Taylor & Wilson 1990.
#pragma once

#include "solver/elements/shell_material.h"

#include <Eigen/Core>

#include <array>

namespace gapstrain::solver {

// Unknowns, node by node: u (3) and rotation vector theta (3), global components.
struct QuadShape {
  Eigen::Matrix<double, 4, 3> nodes;      // mid-surface, mm
  Eigen::Matrix<double, 4, 3> directors;  // unit
  Eigen::Vector4d thickness;              // mm
  Eigen::Vector3d axis_1;                 // material axis 1 after projection on the tangent plane
};

using QuadMatrix = Eigen::Matrix<double, 24, 24>;
using QuadStressRows = Eigen::Matrix<double, 3, 24>;

// Stiffness, N/mm and N mm/rad. @throw std::invalid_argument when the Jacobian is not positive somewhere.
QuadMatrix quad_stiffness(const QuadShape& shape, const ShellMaterial& material);

// (s11, s22, s12) in material axes from the unknowns, MPa, at (xi, eta, zeta) in [-1, 1]^3; zeta = 1 on the
// director's side.
QuadStressRows quad_stress(const QuadShape& shape, const ShellMaterial& material, double xi, double eta,
                           double zeta);

// The same at (-reach, -reach), (reach, -reach), (reach, reach) and (-reach, reach): what points share is worked
// out once.
std::array<QuadStressRows, 4> quad_stresses(const QuadShape& shape, const ShellMaterial& material, double reach,
                                            double zeta);

// Geometric stiffness of membrane forces N = (n11, n22, n12) in material axes at the four 2x2 Gauss points
// (rows, in the order (-,-) (+,-) (+,+) (-,+)), N/mm. It acts alike on each of the three translations, node by
// node, and not on rotations.
Eigen::Matrix4d quad_geometric_stiffness(const QuadShape& shape,
                                         const Eigen::Matrix<double, 4, 3>& membrane_force);

// Mid-surface area, mm^2.
double quad_area(const QuadShape& shape);

}  // namespace gapstrain::solver
