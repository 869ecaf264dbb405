#include "solver/bodies/elimination.h"

#include <Eigen/Eigenvalues>

#include <stdexcept>
#include <utility>

namespace gapstrain::solver {

namespace {

// Below this share of the stiffest motion a motion counts as free: round-off leaves 1e-13.
constexpr double free_share = 1e-11;

}  // namespace

// Schur complement on the rigid amplitudes: A = D^T S^-1 D holds the bodies if and only if it is definite.
Elimination::Elimination(const Eigen::MatrixXd& flexibility, const Eigen::MatrixXd& rigid,
                         std::optional<Hands> hands)
    : cholesky_(flexibility), hands_(std::move(hands)) {
  if (cholesky_.info() != Eigen::Success)
    throw std::invalid_argument("two rigid links hold the same motion of a port");
  reduced_rigid_ = cholesky_.matrixL().solve(rigid);
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> spectrum(reduced_rigid_.transpose() * reduced_rigid_);
  const Eigen::VectorXd& values = spectrum.eigenvalues();  // rising
  vectors_ = spectrum.eigenvectors();
  const double pull = hands_ ? hands_->stiffness : 0.0;
  const double limit = free_share * std::max(values(values.size() - 1), pull);
  Eigen::Index free_count = 0;
  while (free_count < values.size() && values(free_count) <= limit) ++free_count;
  free_ = vectors_.leftCols(free_count);
  inverse_values_ = Eigen::VectorXd::Zero(values.size());
  for (Eigen::Index k = 0; k < values.size(); ++k)
    inverse_values_(k) = k >= free_count ? 1.0 / values(k) : hands_ ? 1.0 / pull : 0.0;
}

Eigen::MatrixXd Elimination::hold(const Eigen::MatrixXd& rigid_load) const {
  return vectors_ * inverse_values_.asDiagonal() * (vectors_.transpose() * rigid_load);
}

Elimination::Answer Elimination::solve(const Eigen::MatrixXd& right, const Eigen::MatrixXd& rigid_load) const {
  const Eigen::MatrixXd reduced = cholesky_.matrixL().solve(right);
  Answer answer;
  answer.amplitudes = hold(rigid_load - reduced_rigid_.transpose() * reduced);
  if (hands_ && free_.cols() > 0) answer.amplitudes.colwise() += (free_ * (free_.transpose() * hands_->at)).eval();
  answer.forces = cholesky_.matrixU().solve(reduced + reduced_rigid_ * answer.amplitudes);
  return answer;
}

Eigen::VectorXd Elimination::pull(const Eigen::VectorXd& amplitudes) const {
  if (!hands_) return Eigen::VectorXd::Zero(amplitudes.size());
  return hands_->stiffness * (free_ * (free_.transpose() * (hands_->at - amplitudes)));
}

Elimination::Columns Elimination::columns(const Eigen::MatrixXd& coupling, const Eigen::MatrixXd& rigid) const {
  Columns columns;
  columns.reduced = cholesky_.matrixL().solve(coupling);
  columns.rigid = rigid.transpose() - reduced_rigid_.transpose() * columns.reduced;
  columns.held = hold(columns.rigid);
  return columns;
}

Eigen::MatrixXd Elimination::compliance(const Eigen::MatrixXd& own, const Columns& rows, const Columns& columns) {
  Eigen::MatrixXd result = own;
  result.noalias() -= rows.reduced.transpose() * columns.reduced;
  result.noalias() += rows.rigid.transpose() * columns.held;
  return result;
}

}  // namespace gapstrain::solver
