// The small dense problem: bodies seen from their ports, joined by links, under loads on ports.
//
// With link forces s and rigid amplitudes a of the floating bodies, forces on ports are lambda = f - B s, motions
// q = C lambda + G a, deformations B^T q = F s + e0, and each body is in balance, G^T lambda = 0:
//
//   [ B^T C B + F   -B^T G ] [ s ]   [ B^T C f - e0 ]
//   [ -G^T B           0   ] [ a ] = [ -G^T f       ]
//
// The matrices of all links are formed once; a choice of links is a principal submatrix. A contact pair is two
// links of which only those of closed pairs take part (pressed.h).
#pragma once

#include "solver/bodies/body.h"
#include "solver/bodies/link.h"

#include <Eigen/Core>

#include <stdexcept>
#include <vector>

namespace gapstrain::solver {

// A rigid motion that no link resists.
struct MechanismError : std::runtime_error {
  // `free_motions`: amplitudes of all bodies, six each; a column for each motion, all of them free at once. The
  // body named is the one that is freest, its motion the one it does most.
  explicit MechanismError(const Eigen::MatrixXd& free_motions);
  int body = 0;                        // the body that moves most
  Eigen::Matrix<double, 6, 1> motion;  // its rigid amplitudes (translations, then rotations), largest 1
};

// Loads as forces on port motions: one matrix a body, (its motions x load cases).
using PortLoads = std::vector<Eigen::MatrixXd>;

struct Solution {
  std::vector<int> links;                    // the links that took part, as indices into System::links()
  std::vector<Eigen::MatrixXd> link_forces;  // s of each, (k x load cases), in the order of `links`
  std::vector<Eigen::VectorXd> initial;      // e0 of each
  std::vector<Eigen::MatrixXd> port_forces;  // lambda, a body each
  std::vector<Eigen::MatrixXd> amplitudes;   // rigid amplitudes, (6 x load cases) a body
  std::vector<Eigen::MatrixXd> motions;      // q, a body each
};

class System {
 public:
  // The condensed bodies are borrowed and must outlive the system.
  System(std::vector<const Condensed*> bodies, std::vector<Link> links,
         std::vector<SharedFlexibility> shared = {});

  const std::vector<Link>& links() const { return links_; }
  const std::vector<SharedFlexibility>& shared() const { return shared_; }
  const std::vector<const Condensed*>& bodies() const { return bodies_; }

  // Rows of all links' forces one after another, and where each link's begin.
  Eigen::Index rows() const { return flexibility_.rows(); }
  Eigen::Index first_row(int link) const { return first_row_[static_cast<std::size_t>(link)]; }
  std::vector<Eigen::Index> rows_of(const std::vector<int>& links) const;

  const Eigen::MatrixXd& flexibility() const { return flexibility_; }  // S = B^T C B + F of all rows
  const Eigen::MatrixXd& rigid() const { return rigid_; }              // B^T G, (rows x 6 bodies)
  const Eigen::VectorXd& initial() const { return initial_; }          // e0 of the links as they were given

  // Loads of zero, to be filled in.
  PortLoads no_loads(Eigen::Index load_cases) const;

  // Exact answer with the given links in place, each at its own initial deformation. @throw MechanismError;
  // std::invalid_argument when rigid links are redundant on one and the same port.
  Solution solve(const std::vector<int>& active, const PortLoads& loads) const;

  // The same with other initial deformations (rows).
  Solution solve(const std::vector<int>& active, const PortLoads& loads, const Eigen::VectorXd& initial) const;

  // The same for any loads inside the bodies, given by what they do alone: R^T K+ f at the ports (motions x cases)
  // and their resultants Z^T f (6 x cases), a body each. Links carry nothing at rest. The solution's port forces
  // and motions hold the links' share only.
  Solution solve_free(const std::vector<int>& active, const std::vector<Eigen::MatrixXd>& free_motions,
                      const std::vector<Eigen::MatrixXd>& resultants) const;

  // What loads do alone: deformations B^T C f (rows x cases), resultants G^T f (6 bodies x cases), and twice their
  // elastic work f^T C f (cases).
  struct LoadAlone {
    Eigen::MatrixXd deformations, resultants;
    Eigen::VectorXd work;
  };
  LoadAlone alone(const PortLoads& loads) const;

  // Forces on the ports of each body, loads included: f - B s. `forces`: of all rows (rows x cases).
  std::vector<Eigen::MatrixXd> port_forces(const Eigen::MatrixXd& forces, const PortLoads& loads) const;

  // A solution from its forces in all rows (0 in rows of links that take no part) and amplitudes.
  Solution compose(const std::vector<int>& active, const Eigen::MatrixXd& forces,
                   const Eigen::MatrixXd& amplitudes, const PortLoads& loads,
                   const Eigen::VectorXd& initial) const;

  // How far forces in all rows (rows x cases) stretch a link: F s of its rows.
  Eigen::MatrixXd stretch(int link, const Eigen::MatrixXd& forces) const;

  // B^T q of all rows, (rows x cases).
  Eigen::MatrixXd deformations(const Solution& solution) const;

 private:
  Solution solve_rows(const std::vector<int>& active, const LoadAlone& load, const Eigen::VectorXd& initial) const;

  std::vector<const Condensed*> bodies_;
  std::vector<Link> links_;
  std::vector<SharedFlexibility> shared_;
  std::vector<Eigen::Index> first_row_;
  std::vector<SparseMatrix> coupling_;  // B of each body, (motions x rows)
  Eigen::MatrixXd flexibility_;
  Eigen::MatrixXd rigid_;
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
