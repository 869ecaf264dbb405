#include "solver/bodies/elimination.h"

#include <Eigen/Eigenvalues>

#include <utility>

namespace gapstrain::solver {

namespace {

// Below this share of the stiffest motion a motion counts as free: round-off leaves 1e-13.
constexpr double free_share = 1e-11;

// With a condition number better than one over this there is none for certain, and no need to look at each.
constexpr double firm_share = 1e-9;

}  // namespace

// Schur complement on the rigid amplitudes: A = D^T S^-1 D holds the bodies if and only if it is definite.
Elimination::Elimination(const Eigen::MatrixXd& flexibility, const Eigen::MatrixXd& rigid,
                         std::optional<Hands> hands)
    : hands_(std::move(hands)) {
  auto factor = std::make_unique<RowFactor>(rigid.cols());
  factor->append(Eigen::MatrixXd(0, rigid.rows()), flexibility, rigid);
  own_ = std::move(factor);
  factor_ = own_.get();
  find_free_motions();
}

Elimination::Elimination(const RowFactor& factor, std::optional<Hands> hands)
    : factor_(&factor), hands_(std::move(hands)) {
  find_free_motions();
}

void Elimination::find_free_motions() {
  const auto reduced_rigid = factor_->reduced_rigid();
  const Eigen::MatrixXd stiffness = reduced_rigid.transpose() * reduced_rigid;
  held_.compute(stiffness);
  if (held_.info() == Eigen::Success && held_.rcond() > firm_share) {
    free_.resize(stiffness.rows(), 0);
    return;
  }
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> spectrum(stiffness);
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
  if (vectors_.size() == 0) return held_.solve(rigid_load);
  return vectors_ * inverse_values_.asDiagonal() * (vectors_.transpose() * rigid_load);
}

Elimination::Answer Elimination::solve(const Eigen::MatrixXd& right, const Eigen::MatrixXd& rigid_load) const {
  const Eigen::MatrixXd reduced = factor_->lower().solve(right);
  Answer answer;
  answer.amplitudes = hold(rigid_load - factor_->reduced_rigid().transpose() * reduced);
  if (hands_ && free_.cols() > 0) answer.amplitudes.colwise() += (free_ * (free_.transpose() * hands_->at)).eval();
  answer.forces = factor_->upper().solve(reduced + factor_->reduced_rigid() * answer.amplitudes);
  return answer;
}

Eigen::VectorXd Elimination::pull(const Eigen::VectorXd& amplitudes) const {
  if (!hands_) return Eigen::VectorXd::Zero(amplitudes.size());
  return hands_->stiffness * (free_ * (free_.transpose() * (hands_->at - amplitudes)));
}

Elimination::Columns Elimination::columns(const Eigen::MatrixXd& coupling, const Eigen::MatrixXd& rigid) const {
  Columns columns;
  columns.reduced = factor_->lower().solve(coupling);
  columns.rigid = rigid.transpose() - factor_->reduced_rigid().transpose() * columns.reduced;
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
