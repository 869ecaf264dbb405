#include "solver/host/sparse_factor.h"

#include <Eigen/SparseCholesky>

namespace gapstrain::solver {

namespace {

class EigenFactor : public SparseFactor {
 public:
  explicit EigenFactor(const Eigen::SparseMatrix<double>& lower) : cholesky_(lower) {}
  Eigen::MatrixXd solve(const Eigen::MatrixXd& right) const override { return cholesky_.solve(right); }
  bool is_sound() const { return cholesky_.info() == Eigen::Success; }

 private:
  Eigen::SimplicialLLT<Eigen::SparseMatrix<double>, Eigen::Lower> cholesky_;
};

}  // namespace

std::unique_ptr<const SparseFactor> factor_sparse(const Eigen::SparseMatrix<double>& lower) {
  auto factor = std::make_unique<const EigenFactor>(lower);
  if (!factor->is_sound()) return nullptr;
  return factor;
}

}  // namespace gapstrain::solver
