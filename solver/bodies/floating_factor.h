// Factor of a floating body's stiffness: six statically determinate unknowns are held, loads are made
// self-equilibrated and answers freed of rigid motion, so that nothing depends on which unknowns were held.
// Farhat & Roux 1991, Int J Numer Methods Eng 32:1205; Felippa & Park 2002, Int J Numer Methods Eng 53:2007.
#pragma once

#include "solver/bodies/assemble.h"
#include "solver/bodies/not_elastic_error.h"
#include "solver/host/sparse_factor.h"

#include <Eigen/Core>

#include <memory>
#include <vector>

namespace gapstrain::solver {

class FloatingFactor {
 public:
  // `stiffness`: lower triangle (6n x 6n); `points`: (n x 3), mm. @throw NotElasticError
  FloatingFactor(const SparseMatrix& stiffness, const Eigen::MatrixX3d& points);

  // K+ F for each column of `forces` (6n x k): the answer to the forces' self-equilibrated part, without rigid
  // motion. Symmetric in the sense that G^T K+ F = (K+ G)^T F.
  Eigen::MatrixXd solve(const Eigen::MatrixXd& forces) const;

  // The rigid motions about the points' centroid (see rigid_motions), (6n x 6).
  const Eigen::MatrixXd& rigid() const { return rigid_; }

 private:
  std::unique_ptr<const SparseFactor> factor_;
  Eigen::MatrixXd rigid_;
  Eigen::MatrixXd rigid_orthonormal_;
  std::vector<int> kept_;  // unknowns that are not held
};

}  // namespace gapstrain::solver
