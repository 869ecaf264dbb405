// Cholesky factor of the links' rows, taken up a block at a time. What was taken up last is dropped first, so that
// a tree of choices costs its twigs: the factor of a choice does not depend on what was tried before it.
#pragma once

#include <Eigen/Core>

#include <vector>

namespace gapstrain::solver {

class RowFactor {
 public:
  // `motions`: rigid motions of all bodies.
  explicit RowFactor(Eigen::Index motions) : reduced_rigid_(0, motions) {}

  // Takes up n more rows: `coupling` S of the rows before with them (k x n), `own` S of them (n x n), `rigid` D of
  // them (n x motions). @throw std::invalid_argument when rigid links are redundant on one and the same port.
  void append(const Eigen::MatrixXd& coupling, const Eigen::MatrixXd& own, const Eigen::MatrixXd& rigid);

  // The same from the matrices of all rows, of which `taken` are in already.
  void append(const Eigen::MatrixXd& flexibility, const Eigen::MatrixXd& rigid,
              const std::vector<Eigen::Index>& taken, const std::vector<Eigen::Index>& rows);

  // Keeps the first `rows` only.
  void shrink(Eigen::Index rows) { rows_ = rows; }

  Eigen::Index rows() const { return rows_; }
  Eigen::Index motions() const { return reduced_rigid_.cols(); }

  auto lower() const { return lower_.topLeftCorner(rows_, rows_).triangularView<Eigen::Lower>(); }  // L
  auto upper() const { return lower_.topLeftCorner(rows_, rows_).transpose().triangularView<Eigen::Upper>(); }
  auto reduced_rigid() const { return reduced_rigid_.topRows(rows_); }  // L^-1 D

 private:
  void make_room(Eigen::Index rows);

  Eigen::Index rows_ = 0;
  Eigen::MatrixXd lower_, reduced_rigid_;  // with room to grow
};

}  // namespace gapstrain::solver
