// The door to whoever factors sparse matrices: CHOLMOD where the program runs (solver/native), Eigen where it has
// nothing but a C++ compiler (solver/plain). Which one it is is decided when a program is linked.
#pragma once

#include <Eigen/Core>
#include <Eigen/SparseCore>

#include <memory>

namespace gapstrain::solver {

class SparseFactor {
 public:
  virtual ~SparseFactor() = default;
  virtual Eigen::MatrixXd solve(const Eigen::MatrixXd& right) const = 0;  // for each column

 protected:
  SparseFactor() = default;
  SparseFactor(const SparseFactor&) = default;
  SparseFactor& operator=(const SparseFactor&) = default;
};

// `lower`: lower triangle of a symmetric matrix. Null when it is not positive definite.
std::unique_ptr<const SparseFactor> factor_sparse(const Eigen::SparseMatrix<double>& lower);

}  // namespace gapstrain::solver
