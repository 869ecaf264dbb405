#include "solver/bodies/system.h"

#include "solver/bodies/elimination.h"

#include <Eigen/Eigenvalues>

#include <cassert>
#include <limits>
#include <utility>

namespace gapstrain::solver {

MechanismError::MechanismError(const Eigen::MatrixXd& free_motions)
    : std::runtime_error("the links leave a body free to move") {
  double freest = -1.0;
  for (Eigen::Index first = 0; first < free_motions.rows(); first += 6)
    if (const double freedom = free_motions.middleRows<6>(first).squaredNorm(); freedom > freest) {
      freest = freedom;
      body = static_cast<int>(first / 6);
    }
  const Eigen::Matrix<double, 6, Eigen::Dynamic> own = free_motions.middleRows<6>(6 * body);
  const Eigen::SelfAdjointEigenSolver<Eigen::Matrix<double, 6, 6>> spectrum(own * own.transpose());
  motion = spectrum.eigenvectors().col(5);
  Eigen::Index largest = 0;
  motion.cwiseAbs().maxCoeff(&largest);
  motion /= motion(largest);
}

System::System(std::vector<const Condensed*> bodies, std::vector<Link> links,
               std::vector<SharedFlexibility> shared)
    : bodies_(std::move(bodies)), links_(std::move(links)), shared_(std::move(shared)) {
  Eigen::Index forces = 0;
  for (const auto& link : links_) {
    first_row_.push_back(forces);
    forces += link.size();
  }
  const auto body_count = static_cast<Eigen::Index>(bodies_.size());
  std::vector<std::vector<Eigen::Triplet<double>>> triplets(bodies_.size());
  flexibility_ = Eigen::MatrixXd::Zero(forces, forces);
  initial_ = Eigen::VectorXd::Zero(forces);
  for (std::size_t l = 0; l < links_.size(); ++l) {
    const auto& link = links_[l];
    const Eigen::Index first = first_row_[l];
    assert(link.initial.size() == link.size());
    flexibility_.block(first, first, link.size(), link.size()) = link.flexibility;
    initial_.segment(first, link.size()) = link.initial;
    for (const auto& end : link.ends) {
      assert(end.transfer.cols() == link.size());
      for (Eigen::Index column = 0; column < end.transfer.cols(); ++column)
        for (Eigen::Index row = 0; row < end.transfer.rows(); ++row)
          if (end.transfer(row, column) != 0.0)
            triplets[end.body].emplace_back(static_cast<int>(end.column + row), static_cast<int>(first + column),
                                            end.transfer(row, column));
    }
  }
  for (const auto& both : shared_) {
    const Eigen::Index one = first_row(both.one), other = first_row(both.other);
    assert(both.one != both.other);
    flexibility_.block(one, other, both.flexibility.rows(), both.flexibility.cols()) += both.flexibility;
    flexibility_.block(other, one, both.flexibility.cols(), both.flexibility.rows()) +=
        both.flexibility.transpose();
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

std::vector<Eigen::Index> System::rows_of(const std::vector<int>& links) const {
  std::vector<Eigen::Index> rows;
  for (const int link : links)
    for (Eigen::Index k = 0; k < links_[static_cast<std::size_t>(link)].size(); ++k)
      rows.push_back(first_row(link) + k);
  return rows;
}

PortLoads System::no_loads(Eigen::Index load_cases) const {
  PortLoads loads;
  for (const auto* body : bodies_) loads.push_back(Eigen::MatrixXd::Zero(body->compliance.rows(), load_cases));
  return loads;
}

System::LoadAlone System::alone(const PortLoads& loads) const {
  const Eigen::Index cases = loads.front().cols();
  LoadAlone alone{Eigen::MatrixXd::Zero(rows(), cases), Eigen::MatrixXd(rigid_.cols(), cases),
                  Eigen::VectorXd::Zero(cases)};
  for (std::size_t b = 0; b < bodies_.size(); ++b) {
    const Eigen::MatrixXd motions = bodies_[b]->compliance * loads[b];
    alone.deformations += coupling_[b].transpose() * motions;
    alone.work += loads[b].cwiseProduct(motions).colwise().sum().transpose();
    alone.resultants.middleRows<6>(static_cast<Eigen::Index>(6 * b)) = bodies_[b]->rigid.transpose() * loads[b];
  }
  return alone;
}

Solution System::solve(const std::vector<int>& active, const PortLoads& loads) const {
  return solve(active, loads, initial_);
}

Solution System::solve(const std::vector<int>& active, const PortLoads& loads,
                       const Eigen::VectorXd& initial) const {
  Solution solution = solve_rows(active, alone(loads), initial);
  for (std::size_t b = 0; b < bodies_.size(); ++b) {
    solution.port_forces[b] += loads[b];
    solution.motions[b] += bodies_[b]->compliance * loads[b];
  }
  return solution;
}

Solution System::solve_free(const std::vector<int>& active, const std::vector<Eigen::MatrixXd>& free_motions,
                            const std::vector<Eigen::MatrixXd>& resultants) const {
  const Eigen::Index cases = free_motions.front().cols();
  LoadAlone load{Eigen::MatrixXd::Zero(rows(), cases), Eigen::MatrixXd(rigid_.cols(), cases),
                 Eigen::VectorXd::Zero(cases)};
  for (std::size_t b = 0; b < bodies_.size(); ++b) {
    load.deformations += coupling_[b].transpose() * free_motions[b];
    load.resultants.middleRows<6>(static_cast<Eigen::Index>(6 * b)) = resultants[b];
  }
  return solve_rows(active, load, Eigen::VectorXd::Zero(rows()));
}

Solution System::solve_rows(const std::vector<int>& active, const LoadAlone& load,
                            const Eigen::VectorXd& initial) const {
  const auto taken = rows_of(active);
  const Elimination links(flexibility_(taken, taken), rigid_(taken, Eigen::all));
  if (links.free_motions().cols() > 0) throw MechanismError(links.free_motions());
  const Eigen::MatrixXd right = load.deformations.colwise() - initial;
  const auto answer = links.solve(right(taken, Eigen::all), load.resultants);
  Eigen::MatrixXd forces = Eigen::MatrixXd::Zero(rows(), right.cols());
  forces(taken, Eigen::all) = answer.forces;
  return compose(active, forces, answer.amplitudes, no_loads(right.cols()), initial);
}

std::vector<Eigen::MatrixXd> System::port_forces(const Eigen::MatrixXd& forces, const PortLoads& loads) const {
  std::vector<Eigen::MatrixXd> on_ports;
  for (std::size_t b = 0; b < bodies_.size(); ++b) on_ports.push_back(loads[b] - coupling_[b] * forces);
  return on_ports;
}

Solution System::compose(const std::vector<int>& active, const Eigen::MatrixXd& forces,
                         const Eigen::MatrixXd& amplitudes, const PortLoads& loads,
                         const Eigen::VectorXd& initial) const {
  Solution solution;
  solution.links = active;
  for (const int link : active) {
    const Eigen::Index size = links_[static_cast<std::size_t>(link)].size();
    solution.link_forces.push_back(forces.middleRows(first_row(link), size));
    solution.initial.push_back(initial.segment(first_row(link), size));
  }
  solution.port_forces = port_forces(forces, loads);
  for (std::size_t b = 0; b < bodies_.size(); ++b) {
    const Eigen::MatrixXd amplitude = amplitudes.middleRows<6>(static_cast<Eigen::Index>(6 * b));
    solution.motions.push_back(bodies_[b]->compliance * solution.port_forces[b] + bodies_[b]->rigid * amplitude);
    solution.amplitudes.push_back(amplitude);
  }
  return solution;
}

Eigen::MatrixXd System::stretch(int link, const Eigen::MatrixXd& forces) const {
  const auto forces_of = [&](int index) {
    return forces.middleRows(first_row(index), links_[static_cast<std::size_t>(index)].size());
  };
  Eigen::MatrixXd stretch = links_[static_cast<std::size_t>(link)].flexibility * forces_of(link);
  for (const auto& both : shared_) {
    if (both.one == link) stretch += both.flexibility * forces_of(both.other);
    if (both.other == link) stretch += both.flexibility.transpose() * forces_of(both.one);
  }
  return stretch;
}

Eigen::MatrixXd System::deformations(const Solution& solution) const {
  Eigen::MatrixXd deformations = Eigen::MatrixXd::Zero(rows(), solution.motions.front().cols());
  for (std::size_t b = 0; b < bodies_.size(); ++b) deformations += coupling_[b].transpose() * solution.motions[b];
  return deformations;
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
  Eigen::MatrixXd all_forces = Eigen::MatrixXd::Zero(system.rows(), load_cases);
  for (std::size_t l = 0; l < solution.links.size(); ++l)
    all_forces.middleRows(system.first_row(solution.links[l]), solution.link_forces[l].rows()) =
        solution.link_forces[l];
  for (std::size_t l = 0; l < solution.links.size(); ++l) {
    const auto& forces = solution.link_forces[l];
    const Eigen::MatrixXd stretch = system.stretch(solution.links[l], all_forces);
    balance.stored += 0.5 * forces.cwiseProduct(stretch).colwise().sum().transpose();
    balance.supplied -= 0.5 * (forces.transpose() * solution.initial[l]);
  }
  return balance;
}

Eigen::VectorXd unbalanced_force(const System& system, const Solution& solution) {
  Eigen::VectorXd largest = Eigen::VectorXd::Zero(solution.port_forces.front().cols());
  std::vector<char> missing(static_cast<std::size_t>(largest.size()), 0);
  for (std::size_t b = 0; b < solution.port_forces.size(); ++b) {
    const Eigen::MatrixXd resultant = system.bodies()[b]->rigid.transpose() * solution.port_forces[b];
    largest = largest.cwiseMax(resultant.cwiseAbs().colwise().maxCoeff().transpose());
    for (Eigen::Index load = 0; load < largest.size(); ++load)  // which a maximum may pass over
      if (!resultant.col(load).allFinite()) missing[static_cast<std::size_t>(load)] = 1;
  }
  for (Eigen::Index load = 0; load < largest.size(); ++load)
    if (missing[static_cast<std::size_t>(load)] != 0) largest(load) = std::numeric_limits<double>::quiet_NaN();
  return largest;
}

}  // namespace gapstrain::solver
