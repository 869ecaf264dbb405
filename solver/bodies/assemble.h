// Global matrices of a shell body.
#pragma once

#include "solver/bodies/shell.h"

#include <Eigen/SparseCore>

#include <vector>

namespace gapstrain::solver {

using SparseMatrix = Eigen::SparseMatrix<double>;

// Lower triangle of the stiffness of all cells, (6n x 6n), N/mm and N mm/rad.
SparseMatrix assemble_stiffness(const Shell& shell);

// Geometric stiffness under the membrane forces of a linear solution, N/mm, acting alike on each of the three
// translations and not on rotations: lower triangle, (n x n). `displacements`: (6n).
SparseMatrix assemble_geometric_stiffness(const Shell& shell, const Eigen::VectorXd& displacements);

// Lower triangle of the stiffness of some cells only, on their own nodes: `nodes` lists the global node of each
// local one, the matrix is (6 nodes x 6 nodes).
struct PatchStiffness {
  std::vector<int> nodes;
  SparseMatrix stiffness;
};
PatchStiffness assemble_patch(const Shell& shell, const std::vector<int>& quads,
                              const std::vector<int>& triangles);

// Six rigid motions of points about `origin`: columns are 3 unit translations, then 3 rotations divided by
// `length` so that all columns are of one size. (6n x 6)
Eigen::MatrixXd rigid_motions(const Eigen::MatrixX3d& points, const Eigen::Vector3d& origin, double length);

}  // namespace gapstrain::solver
