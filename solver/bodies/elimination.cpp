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
  const double limit = free_share * std::max(values(values.size() - 1), hands_ ? hands_->stiffness : 0.0);
  Eigen::Index free_count = 0;
  while (free_count < values.size() && values(free_count) <= limit) ++free_count;
  free_ = vectors_.leftCols(free_count);
  inverse_values_ = Eigen::VectorXd::Zero(values.size());
  for (Eigen::Index k = free_count; k < values.size(); ++k) inverse_values_(k) = 1.0 / values(k);
  if (hands_) take_hold();
}

// Firm springs on all free motions, soft ones along what is soft.
void Elimination::take_hold() {
  const Eigen::Index count = free_.cols();
  if (!hands_->soft) {
    grip_ = hands_->stiffness * Eigen::MatrixXd::Identity(count, count);
  } else {
    const Eigen::MatrixXd soft = hands_->soft->transpose() * free_;
    grip_ = hands_->firm * Eigen::MatrixXd::Identity(count, count) -
            (hands_->firm - hands_->stiffness) * soft.transpose() * soft;
  }
  grip_factor_.compute(grip_);
}

Eigen::MatrixXd Elimination::hold(const Eigen::MatrixXd& rigid_load) const {
  if (vectors_.size() == 0) return held_.solve(rigid_load);
  Eigen::MatrixXd held = vectors_ * inverse_values_.asDiagonal() * (vectors_.transpose() * rigid_load);
  if (hands_ && free_.cols() > 0) held += free_ * grip_factor_.solve(free_.transpose() * rigid_load);
  return held;
}

Elimination::Answer Elimination::solve(const Eigen::MatrixXd& right, const Eigen::MatrixXd& rigid_load) const {
  const Eigen::MatrixXd reduced = factor_->lower().solve(right);
  Answer answer;
  answer.amplitudes = hold(rigid_load - factor_->reduced_rigid().transpose() * reduced);
  if (hands_ && free_.cols() > 0) answer.amplitudes.colwise() += (free_ * (free_.transpose() * hands_->at)).eval();
  answer.forces = factor_->upper().solve(reduced + factor_->reduced_rigid() * answer.amplitudes);
  return answer;
}

Eigen::MatrixXd Elimination::springs() const {
  const Eigen::Index motions = factor_->motions();
  if (!hands_ || free_.cols() == 0) return Eigen::MatrixXd::Zero(motions, motions);
  return free_ * grip_ * free_.transpose();
}

Eigen::VectorXd Elimination::pull(const Eigen::VectorXd& amplitudes) const {
  if (!hands_) return Eigen::VectorXd::Zero(amplitudes.size());
  return free_ * (grip_ * (free_.transpose() * (hands_->at - amplitudes)));
}

Eigen::VectorXd Elimination::soft_pull(const Eigen::VectorXd& amplitudes) const {
  Eigen::VectorXd all = pull(amplitudes);
  if (!hands_ || !hands_->soft) return all;
  return *hands_->soft * (hands_->soft->transpose() * all);
}

void Elimination::give_way(const Eigen::VectorXd& amplitudes) {
  if (!hands_->soft)
    hands_->at = amplitudes;
  else
    hands_->at += *hands_->soft * (hands_->soft->transpose() * (amplitudes - hands_->at));
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
