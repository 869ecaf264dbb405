#include "tests/solver/bodies/monolithic.h"

#include <Eigen/UmfPackSupport>

#include <stdexcept>

namespace gapstrain::tests {

MonolithicSolution solve_monolithic(const std::vector<MonolithicBody>& bodies,
                                    const std::vector<solver::Link>& links, const solver::PortLoads& loads,
                                    const std::vector<solver::SharedFlexibility>& shared) {
  std::vector<Eigen::Index> first;
  Eigen::Index size = 0;
  for (const auto& body : bodies) {
    first.push_back(size);
    size += body.stiffness->rows();
  }
  const Eigen::Index displacement_count = size;
  for (const auto& link : links) size += link.size();

  std::vector<Eigen::Triplet<double>> triplets;
  const auto put = [&](Eigen::Index row, Eigen::Index column, double value) {
    triplets.emplace_back(static_cast<int>(row), static_cast<int>(column), value);
  };
  Eigen::MatrixXd right = Eigen::MatrixXd::Zero(size, loads.front().cols());
  for (std::size_t b = 0; b < bodies.size(); ++b) {
    const solver::SparseMatrix full = bodies[b].stiffness->selfadjointView<Eigen::Lower>();
    for (Eigen::Index column = 0; column < full.outerSize(); ++column)
      for (solver::SparseMatrix::InnerIterator entry(full, column); entry; ++entry)
        put(first[b] + entry.row(), first[b] + entry.col(), entry.value());
    right.middleRows(first[b], full.rows()) = bodies[b].ports->spread * loads[b];
  }
  Eigen::Index row = displacement_count;
  std::vector<Eigen::Index> first_row;
  for (const auto& link : links) {
    first_row.push_back(row);
    for (const auto& end : link.ends) {
      const auto b = end.body;
      const Eigen::MatrixXd columns =
          bodies[b].ports->spread.middleCols(end.column, end.transfer.rows()) * end.transfer;
      for (Eigen::Index k = 0; k < columns.cols(); ++k) {
        for (Eigen::Index r = 0; r < columns.rows(); ++r) {
          if (columns(r, k) == 0.0) continue;
          put(first[b] + r, row + k, columns(r, k));
          put(row + k, first[b] + r, columns(r, k));
        }
      }
    }
    for (Eigen::Index i = 0; i < link.size(); ++i) {
      for (Eigen::Index j = 0; j < link.size(); ++j)
        if (link.flexibility(i, j) != 0.0) put(row + i, row + j, -link.flexibility(i, j));
      right.row(row + i).setConstant(link.initial(i));
    }
    row += link.size();
  }
  for (const auto& both : shared)
    for (Eigen::Index i = 0; i < both.flexibility.rows(); ++i)
      for (Eigen::Index j = 0; j < both.flexibility.cols(); ++j) {
        const Eigen::Index one = first_row[static_cast<std::size_t>(both.one)] + i,
                           other = first_row[static_cast<std::size_t>(both.other)] + j;
        put(one, other, -both.flexibility(i, j));
        put(other, one, -both.flexibility(i, j));
      }
  solver::SparseMatrix matrix(size, size);
  matrix.setFromTriplets(triplets.begin(), triplets.end());
  const Eigen::UmfPackLU<solver::SparseMatrix> factor(matrix);
  if (factor.info() != Eigen::Success) throw std::runtime_error("the monolithic matrix is singular");
  Eigen::MatrixXd answer = factor.solve(right);
  // Round-off of one elimination is not what is being compared: two steps of refinement take it out.
  for (int step = 0; step < 2; ++step) answer += factor.solve((right - matrix * answer).eval());

  MonolithicSolution solution;
  for (std::size_t b = 0; b < bodies.size(); ++b)
    solution.displacements.push_back(answer.middleRows(first[b], bodies[b].stiffness->rows()));
  row = displacement_count;
  for (const auto& link : links) {
    solution.link_forces.push_back(answer.middleRows(row, link.size()));
    row += link.size();
  }
  return solution;
}

}  // namespace gapstrain::tests
