// Bodies that turn by any angle under a load, joined by links that turn with them.
//
// Each body is linear in frames of its own (turning_body.h). A link's deformation is what somebody sees who turns
// with its last end: shifts of the points that its forces act on, and turns; what links to the ground hold is seen
// by the ground. With D(q) these deformations, f the loads where they act now and W q the pull-back of forces:
//   lambda = W f - D'^T s,  D(q) = F s + e0
// What the linear law lacks of this, in forces on ports and in initial deformation of links, is given to it as
// added forces and added initial deformation, and found in turns: each round is one ordinary answer, so contact,
// friction and yield are inside, and sections, stress and balance follow from the answer as always.
#pragma once

#include "solver/bodies/system.h"
#include "solver/motion/turning_body.h"

#include <Eigen/Core>

#include <functional>
#include <optional>
#include <vector>

namespace gapstrain::solver {

// From a port to the point at which its forces act: a rigid arm that turns with it.
struct TurningArm {
  std::size_t body = 0;
  Eigen::Index column = 0;  // of the port
  Eigen::Vector3d arm;
};

struct PlacedBodies {
  std::vector<PlacedBody> nodes;
  std::vector<std::vector<Placed>> ports;
};

class TurningSystem {
 public:
  // One entry a body. The system is borrowed.
  TurningSystem(const System& system, std::vector<TurningBody> bodies);

  const System& system() const { return system_; }
  const std::vector<TurningBody>& bodies() const { return bodies_; }

  // `motions`: of each body, from the state in which links and arms are as they were entered.
  PlacedBodies place(const std::vector<Eigen::VectorXd>& motions) const;
  // D(q) of all rows.
  Eigen::VectorXd deformations(const PlacedBodies& placed, const std::vector<Eigen::VectorXd>& motions) const;
  // On ports, of link forces in all rows and of loads that keep their direction: lambda.
  PortLoads port_forces(const PlacedBodies& placed, const std::vector<Eigen::VectorXd>& motions,
                        const Eigen::VectorXd& forces, const PortLoads& loads,
                        const std::vector<TurningArm>& arms) const;

 private:
  // Forces of an end in its own frame: along their lines through a point, and besides them as moments.
  struct End {
    std::size_t body = 0, port = 0;
    Eigen::Matrix3Xd lines, moments;  // a column a force
    Eigen::Vector3d point;            // from the port's place
  };
  struct TurningLink {
    Eigen::Index first = 0, size = 0;
    std::vector<End> ends;
    std::optional<End> seen_from;  // nothing: the ground
  };
  // What is seen of an end.
  struct Seen {
    Eigen::Vector3d point, shift, turn;  // in space; as seen
    Placed from;
  };
  Seen see(const TurningLink& link, const End& end, const PlacedBodies& placed) const;
  std::optional<End> end_of(const LinkEnd& end) const;  // nothing where it is one of strains

  const System& system_;
  std::vector<TurningBody> bodies_;
  std::vector<TurningLink> links_;
};

// A state as far as it is needed here.
struct MovedState {
  Eigen::VectorXd forces;                // of links, all rows
  std::vector<Eigen::VectorXd> motions;  // of each body
};

// What was found, to be given to the linear law.
struct LargeMotion {
  PortLoads forces;         // added to the load
  Eigen::VectorXd initial;  // added to the links' initial deformations
  double residual = 0.0;    // change of both in the last round, relative
  bool settled = false;
  double turn = 0.0, turn_within = 0.0;  // rad: see largest_turn
  int rounds = 0;
  std::vector<PlacedBody> nodes;  // of each body
};

// Under a load that is put on in `steps` equal shares. `made`: before it. `solve`: the linear law's state under
// that share of the load, more forces and more initial deformation; its last call is for what is returned.
LargeMotion find_large_motion(
    const TurningSystem& turning, const MovedState& made, const PortLoads& load,
    const std::vector<TurningArm>& arms, int steps,
    const std::function<MovedState(double, const PortLoads&, const Eigen::VectorXd&)>& solve);

}  // namespace gapstrain::solver
