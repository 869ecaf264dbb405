// An elastic body, factored once, and what its ports see of it.
#pragma once

#include "solver/bodies/floating_factor.h"
#include "solver/bodies/port.h"

#include <Eigen/Core>

#include <vector>

namespace gapstrain::solver {

// A body's ports side by side. Each port's motions start at its column.
struct Ports {
  SparseMatrix spread;  // (6n x m)
  std::vector<Eigen::Index> first_column;
};
Ports join_ports(Eigen::Index unknowns, const std::vector<Port>& ports);

// A linear reading of a body's motion (some nodes' displacement, some nodes' stress) carried over to port forces.
struct Probe {
  Eigen::MatrixXd of_port_forces;  // (r x m)
  Eigen::MatrixXd of_rigid;        // (r x 6)
};

// A body as its ports see it: port motions q = compliance * forces + rigid * amplitudes, exactly.
struct Condensed {
  Eigen::MatrixXd compliance;  // C = R^T K+ R, (m x m), symmetric, semi-definite
  Eigen::MatrixXd rigid;       // G = R^T Z, (m x 6)
  Eigen::Matrix<double, 3, 6> turn = Eigen::Matrix<double, 3, 6>::Zero();  // of the whole body, rad, by amplitudes
  std::vector<Probe> probes;
};

class Body {
 public:
  // Assembles and factors. @throw NotElasticError
  explicit Body(Shell shell);

  const Shell& shell() const { return shell_; }
  const SparseMatrix& stiffness() const { return stiffness_; }  // lower triangle
  const Eigen::MatrixXd& rigid() const { return factor_.rigid(); }

  // Compliance seen from the ports, and probes (rows over 6n unknowns) carried along. One back-substitution a
  // column.
  Condensed condense(const Ports& ports, const std::vector<SparseMatrix>& probes = {}) const;

  // Displacements of all nodes under port forces (m x k) and rigid amplitudes (6 x k). (6n x k)
  Eigen::MatrixXd displacements(const Ports& ports, const Eigen::MatrixXd& port_forces,
                                const Eigen::MatrixXd& amplitudes) const;

  // K+ of nodal forces (6n x k): see FloatingFactor::solve.
  Eigen::MatrixXd elastic_answer(const Eigen::MatrixXd& forces) const { return factor_.solve(forces); }

  // Largest nodal out-of-balance force of such a solution over the largest nodal force, per column.
  Eigen::VectorXd residual(const Ports& ports, const Eigen::MatrixXd& port_forces,
                           const Eigen::MatrixXd& displacements) const;

 private:
  Shell shell_;
  SparseMatrix stiffness_;
  FloatingFactor factor_;
};

}  // namespace gapstrain::solver
