// Stresses at nodes, averaged over the cells that meet there, as linear readings of the displacements.
#pragma once

#include "solver/bodies/assemble.h"

#include <Eigen/Core>

#include <vector>

namespace gapstrain::solver {

// Rows (s11, s22, s12) in material axes of each listed node, at zeta in [-1, 1] through the wall (1: director's
// side), MPa from the unknowns. Quads are evaluated at the node itself, triangles at their centroid. (3k x 6n)
SparseMatrix node_stress_rows(const Shell& shell, const std::vector<int>& nodes, double zeta);

// The same for all nodes and several displacement fields (6n x k) at once, without forming the rows. (3n x k)
Eigen::MatrixXd node_stress(const Shell& shell, const Eigen::MatrixXd& displacements, double zeta);

// Largest difference between the stress of any one cell at a node and the node's average, as a share of `scale`:
// the recovery indicator of the mesh error. `displacements`: (6n).
double stress_jump(const Shell& shell, const Eigen::VectorXd& displacements, int node, double zeta, double scale);

// Energy of the difference between raw and recovered (node-averaged, interpolated) wall stress over all quads, N
// mm: the error in energy as Zienkiewicz & Zhu 1987 estimate it. Triangles, rare, are left out. `displacements`:
// (6n x k); one energy a column.
Eigen::VectorXd recovery_error_energy(const Shell& shell, const Eigen::MatrixXd& displacements);

// von Mises stress of each row (s11, s22, s12) under plane stress. (k)
Eigen::VectorXd von_mises(const Eigen::MatrixX3d& stress);

// Reshapes one column of stacked rows (3k) to (k x 3).
Eigen::MatrixX3d as_rows(const Eigen::VectorXd& stacked);

}  // namespace gapstrain::solver
