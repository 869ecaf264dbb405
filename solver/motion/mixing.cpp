#include "solver/motion/mixing.h"

#include <Eigen/QR>

#include <algorithm>
#include <utility>

namespace gapstrain::solver {

namespace {

void append_column(Eigen::MatrixXd& columns, const Eigen::VectorXd& column, Eigen::Index kept) {
  Eigen::MatrixXd joined(column.size(), kept + 1);
  if (kept > 0) joined.leftCols(kept) = columns.rightCols(kept);
  joined.col(kept) = column;
  columns = std::move(joined);
}

}  // namespace

Eigen::VectorXd Mixing::next(const Eigen::VectorXd& x, const Eigen::VectorXd& value) {
  const Eigen::VectorXd residual = value - x;
  if (last_residual_.size() > 0) {
    const Eigen::Index kept = std::min(residuals_.cols(), most_ - 1);
    append_column(residuals_, residual - last_residual_, kept);
    append_column(values_, value - last_value_, kept);
  }
  last_residual_ = residual;
  last_value_ = value;
  if (residuals_.cols() == 0) return value;
  const Eigen::ColPivHouseholderQR<Eigen::MatrixXd> factor(residuals_);
  return value - values_ * factor.solve(residual);
}

}  // namespace gapstrain::solver
