#include "solver/bodies/row_factor.h"

#include <Eigen/Cholesky>

#include <algorithm>
#include <stdexcept>

namespace gapstrain::solver {

namespace {

constexpr double least_pivot = 1e-12;  // of a row's own flexibility

}  // namespace

void RowFactor::append(const Eigen::MatrixXd& coupling, const Eigen::MatrixXd& own, const Eigen::MatrixXd& rigid) {
  const Eigen::Index count = own.rows();
  const Eigen::MatrixXd reduced = lower().solve(coupling);
  const Eigen::LLT<Eigen::MatrixXd> cholesky(own - reduced.transpose() * reduced);
  // A pivot that cancels but for rounding is none.
  const Eigen::ArrayXd pivots = cholesky.matrixLLT().diagonal().array().square();
  if (cholesky.info() != Eigen::Success || (pivots <= least_pivot * own.diagonal().array()).any())
    throw std::invalid_argument("two rigid links hold the same motion of a port");
  make_room(rows_ + count);
  lower_.block(rows_, 0, count, rows_) = reduced.transpose();
  lower_.block(rows_, rows_, count, count) = cholesky.matrixL();
  reduced_rigid_.middleRows(rows_, count) =
      cholesky.matrixL().solve(rigid - reduced.transpose() * reduced_rigid_.topRows(rows_));
  rows_ += count;
}

void RowFactor::append(const Eigen::MatrixXd& flexibility, const Eigen::MatrixXd& rigid,
                       const std::vector<Eigen::Index>& taken, const std::vector<Eigen::Index>& rows) {
  append(flexibility(taken, rows), flexibility(rows, rows), rigid(rows, Eigen::all));
}

void RowFactor::make_room(Eigen::Index rows) {
  if (rows <= lower_.rows()) return;
  // An odd number of cache lines a column: a power of two would have rows of columns evict each other.
  const Eigen::Index room = std::max(rows, 2 * lower_.rows()) / 16 * 16 + 24;
  lower_.conservativeResize(room, room);
  reduced_rigid_.conservativeResize(room, Eigen::NoChange);
}

}  // namespace gapstrain::solver
