#include "solver/bodies/floating_factor.h"

#include <Eigen/Geometry>
#include <Eigen/QR>

#include <algorithm>
#include <array>

namespace gapstrain::solver {

namespace {

// Three nodes that span the body: any two far apart, the third far from their line.
std::array<Eigen::Index, 3> spanning_nodes(const Eigen::MatrixX3d& points) {
  std::array<Eigen::Index, 3> nodes{};
  const Eigen::RowVector3d centroid = points.colwise().mean();
  (points.rowwise() - centroid).rowwise().squaredNorm().maxCoeff(&nodes[0]);
  (points.rowwise() - points.row(nodes[0])).rowwise().squaredNorm().maxCoeff(&nodes[1]);
  const Eigen::Vector3d line = (points.row(nodes[1]) - points.row(nodes[0])).normalized();
  double furthest = -1.0;
  for (Eigen::Index node = 0; node < points.rows(); ++node) {
    const Eigen::Vector3d arm = points.row(node) - points.row(nodes[0]);
    const double distance = arm.cross(line).squaredNorm();
    if (distance > furthest) {
      furthest = distance;
      nodes[2] = node;
    }
  }
  return nodes;
}

// Six of the nine translations of three nodes, chosen so that holding them stops all rigid motion as firmly as can
// be.
std::vector<int> determinate_supports(const Eigen::MatrixX3d& points, const Eigen::MatrixXd& rigid) {
  const auto nodes = spanning_nodes(points);
  Eigen::Matrix<double, 6, 9> candidates;
  std::array<int, 9> unknown{};
  for (int k = 0; k < 9; ++k) {
    unknown[static_cast<std::size_t>(k)] = static_cast<int>(6 * nodes[static_cast<std::size_t>(k / 3)]) + k % 3;
    candidates.col(k) = rigid.row(unknown[static_cast<std::size_t>(k)]).transpose();
  }
  const Eigen::ColPivHouseholderQR<Eigen::Matrix<double, 6, 9>> qr(candidates);
  std::vector<int> held;
  for (int k = 0; k < 6; ++k) held.push_back(unknown[static_cast<std::size_t>(qr.colsPermutation().indices()(k))]);
  std::sort(held.begin(), held.end());
  return held;
}

}  // namespace

FloatingFactor::FloatingFactor(const SparseMatrix& stiffness, const Eigen::MatrixX3d& points) {
  const Eigen::Vector3d centroid = points.colwise().mean().transpose();
  const double size = (points.rowwise() - centroid.transpose()).rowwise().norm().maxCoeff();
  rigid_ = rigid_motions(points, centroid, size);
  rigid_orthonormal_ =
      Eigen::HouseholderQR<Eigen::MatrixXd>(rigid_).householderQ() * Eigen::MatrixXd::Identity(rigid_.rows(), 6);

  const auto held = determinate_supports(points, rigid_);
  std::vector<int> position(static_cast<std::size_t>(stiffness.rows()), 0);
  for (const int unknown : held) position[static_cast<std::size_t>(unknown)] = -1;
  for (std::size_t unknown = 0; unknown < position.size(); ++unknown) {
    if (position[unknown] < 0) continue;
    position[unknown] = static_cast<int>(kept_.size());
    kept_.push_back(static_cast<int>(unknown));
  }

  SparseMatrix reduced(static_cast<Eigen::Index>(kept_.size()), static_cast<Eigen::Index>(kept_.size()));
  reduced.reserve(stiffness.nonZeros());
  for (std::size_t column = 0; column < kept_.size(); ++column) {
    reduced.startVec(static_cast<Eigen::Index>(column));
    for (SparseMatrix::InnerIterator entry(stiffness, kept_[column]); entry; ++entry) {
      const int row = position[static_cast<std::size_t>(entry.row())];
      if (row >= 0) reduced.insertBack(row, static_cast<Eigen::Index>(column)) = entry.value();
    }
  }
  reduced.finalize();
  factor_ = factor_sparse(reduced);
  if (factor_ == nullptr)
    throw NotElasticError("a body's stiffness is not positive definite: part of its mesh hangs on nothing");
}

Eigen::MatrixXd FloatingFactor::solve(const Eigen::MatrixXd& forces) const {
  const Eigen::MatrixXd resultant = rigid_orthonormal_.transpose() * forces;
  Eigen::MatrixXd right(static_cast<Eigen::Index>(kept_.size()), forces.cols());
  const Eigen::MatrixXd balanced = forces - rigid_orthonormal_ * resultant;
  for (std::size_t row = 0; row < kept_.size(); ++row)
    right.row(static_cast<Eigen::Index>(row)) = balanced.row(kept_[row]);
  const Eigen::MatrixXd answer = factor_->solve(right);
  Eigen::MatrixXd motion = Eigen::MatrixXd::Zero(forces.rows(), forces.cols());
  for (std::size_t row = 0; row < kept_.size(); ++row)
    motion.row(kept_[row]) = answer.row(static_cast<Eigen::Index>(row));
  motion -= rigid_orthonormal_ * (rigid_orthonormal_.transpose() * motion).eval();
  return motion;
}

}  // namespace gapstrain::solver
