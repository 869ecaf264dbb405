#include "solver/bodies/body.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace gapstrain::solver {

Ports join_ports(Eigen::Index unknowns, const std::vector<Port>& ports) {
  Ports joined;
  std::vector<Eigen::Triplet<double>> triplets;
  Eigen::Index column = 0;
  for (const auto& port : ports) {
    joined.first_column.push_back(column);
    for (Eigen::Index k = 0; k < port.motions(); ++k)
      for (SparseMatrix::InnerIterator entry(port.spread, k); entry; ++entry)
        triplets.emplace_back(static_cast<int>(entry.row()), static_cast<int>(column + k), entry.value());
    column += port.motions();
  }
  joined.spread.resize(unknowns, column);
  joined.spread.setFromTriplets(triplets.begin(), triplets.end());
  return joined;
}

Body::Body(Shell shell)
    : shell_(std::move(shell)), stiffness_(assemble_stiffness(shell_)), factor_(stiffness_, shell_.mesh->nodes) {}

Condensed Body::condense(const Ports& ports, const std::vector<SparseMatrix>& probes) const {
  constexpr Eigen::Index block = 64;  // columns a back-substitution: enough for level-3 BLAS, little memory
  const Eigen::Index motions = ports.spread.cols();
  Condensed condensed;
  condensed.compliance.resize(motions, motions);
  condensed.rigid = ports.spread.transpose() * factor_.rigid();
  condensed.turn = factor_.rigid().middleRows<3>(3);  // of any node
  for (const auto& probe : probes)
    condensed.probes.push_back({Eigen::MatrixXd(probe.rows(), motions), probe * factor_.rigid()});
  for (Eigen::Index first = 0; first < motions; first += block) {
    const Eigen::Index count = std::min(block, motions - first);
    const Eigen::MatrixXd motion = factor_.solve(Eigen::MatrixXd(ports.spread.middleCols(first, count)));
    condensed.compliance.middleCols(first, count) = ports.spread.transpose() * motion;
    for (std::size_t k = 0; k < probes.size(); ++k)
      condensed.probes[k].of_port_forces.middleCols(first, count) = probes[k] * motion;
  }
  condensed.compliance = (0.5 * (condensed.compliance + condensed.compliance.transpose())).eval();
  return condensed;
}

Eigen::MatrixXd Body::displacements(const Ports& ports, const Eigen::MatrixXd& port_forces,
                                    const Eigen::MatrixXd& amplitudes) const {
  return factor_.solve(ports.spread * port_forces) + factor_.rigid() * amplitudes;
}

Eigen::VectorXd Body::residual(const Ports& ports, const Eigen::MatrixXd& port_forces,
                               const Eigen::MatrixXd& displacements) const {
  const Eigen::MatrixXd applied = ports.spread * port_forces;
  const Eigen::MatrixXd out_of_balance = stiffness_.selfadjointView<Eigen::Lower>() * displacements - applied;
  const Eigen::VectorXd scale = applied.cwiseAbs().colwise().maxCoeff().cwiseMax(1e-300).transpose();
  Eigen::VectorXd residual = out_of_balance.cwiseAbs().colwise().maxCoeff().transpose().cwiseQuotient(scale);
  for (Eigen::Index k = 0; k < residual.size(); ++k)  // a maximum may pass over what is no number
    if (!out_of_balance.col(k).allFinite()) residual(k) = std::numeric_limits<double>::quiet_NaN();
  return residual;
}

}  // namespace gapstrain::solver
