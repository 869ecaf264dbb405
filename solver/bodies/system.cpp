#include "solver/bodies/system.h"

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>

#include <cassert>
#include <utility>

namespace gapstrain::solver {

MechanismError::MechanismError(int body_index, const Eigen::Matrix<double, 6, 1>& amplitudes)
    : std::runtime_error("the links leave a body free to move"), body(body_index), motion(amplitudes) {}

System::System(std::vector<const Condensed*> bodies, std::vector<Link> links)
    : bodies_(std::move(bodies)), links_(std::move(links)) {
  Eigen::Index forces = 0;
  for (const auto& link : links_) {
    first_force_.push_back(forces);
    forces += link.size();
  }
  const auto body_count = static_cast<Eigen::Index>(bodies_.size());
  std::vector<std::vector<Eigen::Triplet<double>>> triplets(bodies_.size());
  flexibility_ = Eigen::MatrixXd::Zero(forces, forces);
  initial_ = Eigen::VectorXd::Zero(forces);
  for (std::size_t l = 0; l < links_.size(); ++l) {
    const auto& link = links_[l];
    const Eigen::Index first = first_force_[l];
    assert(link.initial.size() == link.size());
    flexibility_.block(first, first, link.size(), link.size()) = link.flexibility;
    initial_.segment(first, link.size()) = link.initial;
    for (const auto& end : link.ends) {
      assert(end.transfer.cols() == link.size());
      for (Eigen::Index column = 0; column < end.transfer.cols(); ++column)
        for (Eigen::Index row = 0; row < end.transfer.rows(); ++row)
          if (end.transfer(row, column) != 0.0)
            triplets[static_cast<std::size_t>(end.body)].emplace_back(
                static_cast<int>(end.column + row), static_cast<int>(first + column), end.transfer(row, column));
    }
  }
  rigid_ = Eigen::MatrixXd::Zero(forces, 6 * body_count);
  for (std::size_t b = 0; b < bodies_.size(); ++b) {
    SparseMatrix coupling(bodies_[b]->compliance.rows(), forces);
    coupling.setFromTriplets(triplets[b].begin(), triplets[b].end());
    const Eigen::MatrixXd compliance_coupling = bodies_[b]->compliance * coupling;
    flexibility_ += coupling.transpose() * compliance_coupling;
    rigid_.middleCols<6>(static_cast<Eigen::Index>(6 * b)) = coupling.transpose() * bodies_[b]->rigid;
    coupling_.push_back(std::move(coupling));
  }
  flexibility_ = (0.5 * (flexibility_ + flexibility_.transpose())).eval();
}

PortLoads System::no_loads(Eigen::Index load_cases) const {
  PortLoads loads;
  for (const auto* body : bodies_) loads.push_back(Eigen::MatrixXd::Zero(body->compliance.rows(), load_cases));
  return loads;
}

Solution System::solve(const std::vector<int>& active, const PortLoads& loads) const {
  std::vector<Eigen::MatrixXd> free_motions, resultants;
  for (std::size_t b = 0; b < bodies_.size(); ++b) {
    free_motions.push_back(bodies_[b]->compliance * loads[b]);
    resultants.push_back(bodies_[b]->rigid.transpose() * loads[b]);
  }
  Solution solution = solve_free(active, free_motions, resultants, false);
  for (std::size_t b = 0; b < bodies_.size(); ++b) {
    solution.port_forces[b] += loads[b];
    solution.motions[b] += free_motions[b];
  }
  return solution;
}

Solution System::solve_free(const std::vector<int>& active, const std::vector<Eigen::MatrixXd>& free_motions,
                            const std::vector<Eigen::MatrixXd>& resultants, bool stress_free) const {
  std::vector<Eigen::Index> rows;
  for (const int link : active)
    for (Eigen::Index k = 0; k < links_[static_cast<std::size_t>(link)].size(); ++k)
      rows.push_back(first_force_[static_cast<std::size_t>(link)] + k);

  const Eigen::Index load_cases = free_motions.front().cols();
  const auto rigid_count = static_cast<Eigen::Index>(6 * bodies_.size());
  Eigen::MatrixXd right = Eigen::MatrixXd::Zero(flexibility_.rows(), load_cases);
  Eigen::MatrixXd rigid_load(rigid_count, load_cases);
  for (std::size_t b = 0; b < bodies_.size(); ++b) {
    right += coupling_[b].transpose() * free_motions[b];
    rigid_load.middleRows<6>(static_cast<Eigen::Index>(6 * b)) = resultants[b];
  }
  if (!stress_free) right.colwise() -= initial_;

  // Schur complement on the rigid amplitudes: A = D^T S^-1 D holds the bodies if and only if it is definite.
  const Eigen::LLT<Eigen::MatrixXd> cholesky(Eigen::MatrixXd(flexibility_(rows, rows)));
  if (cholesky.info() != Eigen::Success)
    throw std::invalid_argument("two rigid links hold the same motion of a port");
  const Eigen::MatrixXd rigid_rows = rigid_(rows, Eigen::all);
  const Eigen::MatrixXd y_rigid = cholesky.matrixL().solve(rigid_rows);
  const Eigen::MatrixXd y_right = cholesky.matrixL().solve(right(rows, Eigen::all).eval());
  const Eigen::MatrixXd holding = y_rigid.transpose() * y_rigid;
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> spectrum(holding);
  if (spectrum.eigenvalues()(0) < 1e-12 * spectrum.eigenvalues()(rigid_count - 1)) {
    const Eigen::VectorXd free = spectrum.eigenvectors().col(0);
    Eigen::Index largest = 0;
    free.cwiseAbs().maxCoeff(&largest);
    const Eigen::Index body = largest / 6;
    throw MechanismError(static_cast<int>(body), free.segment<6>(6 * body) / free(largest));
  }
  const Eigen::MatrixXd amplitudes =
      spectrum.eigenvectors() * spectrum.eigenvalues().cwiseInverse().asDiagonal() *
      (spectrum.eigenvectors().transpose() * (rigid_load - y_rigid.transpose() * y_right));
  const Eigen::MatrixXd forces = cholesky.matrixU().solve(y_right + y_rigid * amplitudes);

  Solution solution;
  solution.links = active;
  Eigen::MatrixXd all_forces = Eigen::MatrixXd::Zero(flexibility_.rows(), load_cases);
  all_forces(rows, Eigen::all) = forces;
  for (const int link : active)
    solution.link_forces.push_back(all_forces.middleRows(first_force_[static_cast<std::size_t>(link)],
                                                         links_[static_cast<std::size_t>(link)].size()));
  for (std::size_t b = 0; b < bodies_.size(); ++b) {
    const Eigen::MatrixXd amplitude = amplitudes.middleRows<6>(static_cast<Eigen::Index>(6 * b));
    solution.port_forces.push_back(-(coupling_[b] * all_forces));
    solution.motions.push_back(bodies_[b]->compliance * solution.port_forces[b] + bodies_[b]->rigid * amplitude);
    solution.amplitudes.push_back(amplitude);
  }
  return solution;
}

EnergyBalance energy_balance(const System& system, const Solution& solution, const PortLoads& loads) {
  const Eigen::Index load_cases = loads.front().cols();
  EnergyBalance balance{Eigen::VectorXd::Zero(load_cases), Eigen::VectorXd::Zero(load_cases)};
  for (std::size_t b = 0; b < loads.size(); ++b) {
    const auto& forces = solution.port_forces[b];
    const Eigen::MatrixXd motion = system.bodies()[b]->compliance * forces;
    balance.stored += 0.5 * forces.cwiseProduct(motion).colwise().sum().transpose();
    balance.supplied += 0.5 * loads[b].cwiseProduct(solution.motions[b]).colwise().sum().transpose();
  }
  for (std::size_t l = 0; l < solution.links.size(); ++l) {
    const auto& link = system.links()[static_cast<std::size_t>(solution.links[l])];
    const auto& forces = solution.link_forces[l];
    const Eigen::MatrixXd stretch = link.flexibility * forces;
    balance.stored += 0.5 * forces.cwiseProduct(stretch).colwise().sum().transpose();
    balance.supplied -= 0.5 * (forces.transpose() * link.initial);
  }
  return balance;
}

Eigen::VectorXd unbalanced_force(const System& system, const Solution& solution) {
  Eigen::VectorXd largest = Eigen::VectorXd::Zero(solution.port_forces.front().cols());
  for (std::size_t b = 0; b < solution.port_forces.size(); ++b) {
    const Eigen::MatrixXd resultant = system.bodies()[b]->rigid.transpose() * solution.port_forces[b];
    largest = largest.cwiseMax(resultant.cwiseAbs().colwise().maxCoeff().transpose());
  }
  return largest;
}

}  // namespace gapstrain::solver
