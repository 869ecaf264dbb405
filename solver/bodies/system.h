// The small dense problem: bodies seen from their ports, joined by links, under loads on ports.
//
// With link forces s and rigid amplitudes a of the floating bodies, forces on ports are lambda = f - B s, motions
// q = C lambda + G a, deformations B^T q = F s + e0, and each body is in balance, G^T lambda = 0:
//
//   [ B^T C B + F   -B^T G ] [ s ]   [ B^T C f - e0 ]
//   [ -G^T B           0   ] [ a ] = [ -G^T f       ]
//
// The matrices of all links are formed once; a choice of links is a principal submatrix.
#pragma once

#include "solver/bodies/body.h"
#include "solver/bodies/link.h"

#include <Eigen/Core>

#include <stdexcept>
#include <vector>

namespace gapstrain::solver {

// A rigid motion that no link resists.
struct MechanismError : std::runtime_error {
  MechanismError(int body_index, const Eigen::Matrix<double, 6, 1>& amplitudes);
  int body = 0;                        // the body that moves most
  Eigen::Matrix<double, 6, 1> motion;  // its rigid amplitudes (translations, then rotations), largest 1
};

// Loads as forces on port motions: one matrix a body, (its motions x load cases).
using PortLoads = std::vector<Eigen::MatrixXd>;

struct Solution {
  std::vector<int> links;                    // the links that took part, as indices into System::links()
  std::vector<Eigen::MatrixXd> link_forces;  // s of each, (k x load cases), in the order of `links`
  std::vector<Eigen::MatrixXd> port_forces;  // lambda, a body each
  std::vector<Eigen::MatrixXd> amplitudes;   // rigid amplitudes, (6 x load cases) a body
  std::vector<Eigen::MatrixXd> motions;      // q, a body each
};

class System {
 public:
  // The condensed bodies are borrowed and must outlive the system.
  System(std::vector<const Condensed*> bodies, std::vector<Link> links);

  const std::vector<Link>& links() const { return links_; }
  const std::vector<const Condensed*>& bodies() const { return bodies_; }

  // Loads of zero, to be filled in.
  PortLoads no_loads(Eigen::Index load_cases) const;

  // Exact answer with the given links in place. @throw MechanismError; std::invalid_argument when rigid links are
  // redundant on one and the same port.
  Solution solve(const std::vector<int>& active, const PortLoads& loads) const;

  // The same for any loads inside the bodies, given by what they do alone: R^T K+ f at the ports (motions x cases)
  // and their resultants Z^T f (6 x cases), a body each. Initial deformations are left out when `stress_free`.
  // The solution's port forces and motions hold the links' share only.
  Solution solve_free(const std::vector<int>& active, const std::vector<Eigen::MatrixXd>& free_motions,
                      const std::vector<Eigen::MatrixXd>& resultants, bool stress_free) const;

 private:
  std::vector<const Condensed*> bodies_;
  std::vector<Link> links_;
  std::vector<Eigen::Index> first_force_;  // of each link among all link forces
  std::vector<SparseMatrix> coupling_;     // B of each body, (motions x all link forces)
  Eigen::MatrixXd flexibility_;            // S of all links
  Eigen::MatrixXd rigid_;                  // B^T G of all links and bodies, (all link forces x 6 bodies)
  Eigen::VectorXd initial_;
};

// Elastic energy stored in bodies and links, and work of the loads and initial deformations, per load case.
struct EnergyBalance {
  Eigen::VectorXd stored;
  Eigen::VectorXd supplied;
};
EnergyBalance energy_balance(const System& system, const Solution& solution, const PortLoads& loads);

// Largest resultant (force, or moment over the body's size) left on any body, per load case.
Eigen::VectorXd unbalanced_force(const System& system, const Solution& solution);

}  // namespace gapstrain::solver
