// Bodies and links with contact: which pairs of spots touch, which of those slide, and the forces between them.
//
// Without friction a state depends on the initial deformations only; with it also on the way there, so a state
// hands its initial deformations on to the next one.
#pragma once

#include "solver/bodies/elimination.h"
#include "solver/bodies/system.h"

#include <Eigen/Core>

#include <vector>

namespace gapstrain::solver {

// A pair of spots that may touch, as two links of the system, of which those of a closed pair take part. The
// normal link has one row, the motion of the second side away from the first, and minus the gap as initial
// deformation; the tangent link has the two motions across it. The small flexibility of both (the surface's own
// give) makes any number of pairs harmless.
struct ContactPair {
  int normal = 0;
  int tangent = 0;
};

// A row of a link whose force is given instead of its deformation: a screw while it is being tightened.
struct DrivenRow {
  Eigen::Index row = 0;
  double force = 0.0;
};

// What is in place, and from which deformations it carries.
struct Setting {
  std::vector<int> links;         // besides those of the pairs
  Eigen::VectorXd initial;        // e0 of all rows
  std::vector<DrivenRow> driven;  // rows of `links`
  Eigen::VectorXd friction;       // coefficient of each pair; infinity: a closed pair sticks
  std::vector<char> closed;       // pairs to start from (those of a state near by); may be empty
  Hands hands;                    // hold what nothing else holds
};

// The answer itself: what everything carries, and what touches.
struct PressedForces {
  Eigen::VectorXd forces;                                 // of all rows; 0 where nothing is in place
  Eigen::VectorXd amplitudes;                             // rigid ones, (6 bodies)
  Eigen::VectorXd pressure;                               // force of each pair, N
  Eigen::VectorXd gap;                                    // of each pair, mm
  Eigen::MatrixX2d traction;                              // on the second side, N
  std::vector<char> closed, slides;                       // of each pair
  std::vector<char> rubs;                                 // whether it may carry a traction
  double complementarity = 0.0, friction_residual = 0.0;  // contact.h
  Eigen::VectorXd pull;                                   // of the hands in the end, (6 bodies), N: 0 but for what
                                                          // slides or drifts away from them
  Eigen::MatrixXd free_motions;                           // that only hands hold in the end, (6 bodies x count)
};

// `factor`: of the rows of the setting's links, all of which must then have no given force; borrowed. Null: made
// here.
PressedForces find_forces(const System& system, const std::vector<ContactPair>& pairs, const Setting& setting,
                          const System::LoadAlone& load, const RowFactor* factor = nullptr);

// The same with all that a next state starts from.
struct PressedState : PressedForces {
  Solution solution;  // links: those of the setting, normals of closed pairs, tangents of closed pairs that rub
  // e0 from which everything carries from now on: driven rows are locked where they are, pairs that slide or are
  // open take up their present place sideways.
  Eigen::VectorXd initial;
};

PressedState press(const System& system, const std::vector<ContactPair>& pairs, const Setting& setting,
                   const PortLoads& loads);

// Links that answer a small load on such a state as they are: of the setting (but for those with rows of given
// force), normals of closed pairs, tangents of closed pairs that do not slide. Pairs that slide are taken to slide
// freely: exact while none does.
std::vector<int> frozen_links(const System& system, const std::vector<ContactPair>& pairs, const Setting& setting,
                              const PressedState& state);

}  // namespace gapstrain::solver
