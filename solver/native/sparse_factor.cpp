#include "solver/host/sparse_factor.h"

#include "solver/native/single_threaded_blas.h"

#include <Eigen/CholmodSupport>

#include <mutex>

namespace gapstrain::solver {

namespace {

class CholmodFactor : public SparseFactor {
 public:
  explicit CholmodFactor(const Eigen::SparseMatrix<double>& lower) {
    keep_blas_single_threaded();
    // Nested dissection fills tubes least; it is the only ordering worth trying for shells.
    cholesky_.cholmod().nmethods = 1;
    cholesky_.cholmod().method[0].ordering = CHOLMOD_METIS;
    cholesky_.cholmod().postorder = 1;
    cholesky_.cholmod().print = 0;  // failure is reported by who asks, not on the terminal
    order(lower);
    cholesky_.factorize(lower);
  }
  Eigen::MatrixXd solve(const Eigen::MatrixXd& right) const override { return cholesky_.solve(right); }
  bool is_sound() const { return cholesky_.info() == Eigen::Success; }

 private:
  // One matrix at a time is ordered: METIS draws on the process' one random sequence, so that two at once would
  // give either another order, and every figure other last digits, from run to run.
  void order(const Eigen::SparseMatrix<double>& lower) {
    static std::mutex ordering;
    const std::scoped_lock alone(ordering);
    cholesky_.analyzePattern(lower);
  }

  Eigen::CholmodSupernodalLLT<Eigen::SparseMatrix<double>, Eigen::Lower> cholesky_;
};

}  // namespace

std::unique_ptr<const SparseFactor> factor_sparse(const Eigen::SparseMatrix<double>& lower) {
  auto factor = std::make_unique<const CholmodFactor>(lower);
  if (!factor->is_sound()) return nullptr;
  return factor;
}

}  // namespace gapstrain::solver
