// The state of a loaded construct in which its axial forces act on it as it is deformed
// (solver/bodies/axial_slopes).
#pragma once

#include "solver/bodies/axial_slopes.h"

#include <functional>
#include <optional>

namespace gapstrain::solver {

// How far parts turn under a load, where that is followed (large_motion.h).
struct LargeTurns {
  double turn = 0.0, within = 0.0;  // rad: of any frame; of what is left linear in its frame
  double residual = 0.0;            // change of what was added in the last round, relative
  bool settled = false;             // else the state is that of small turns
};

// What axial forces, and turns, added to a state under a load.
struct SecondOrder {
  // Axial load over that at which the construct, linear up to there, gives way in the shape into which the load
  // bends it (a Rayleigh quotient after two steps of inverse iteration). Nothing where axial forces do less than
  // a thousandth of the load's work, or stiffen only.
  std::optional<double> load_ratio;
  double amplification = 1.0;  // of the slopes of axes, weighted with their axial forces
  double residual = 0.0;       // relative change of the added forces in the last round
  PortLoads forces;            // added to the load; empty: second-order effects are not in the state
  std::optional<LargeTurns> turns{};
  bool is_in() const { return !forces.empty(); }
};

// Which loads it is found for.
struct SecondOrderRule {
  bool always = false;
  double least_ratio = 0.05;  // otherwise: of the buckling load
};

// Finds the state in which load and added forces agree. `made`: before the load; axial forces and slopes count
// from there. `linear`: under the load alone, which did the work f.q `work`. `solve`: the state under the load and
// more forces; its last call is for the forces that are returned, if there are any.
// A load of 1 and more times the buckling load has no such state: its ratio is returned, and no forces.
SecondOrder find_second_order(const AxialSlopes& axes, const SecondOrderRule& rule, const PortState& made,
                              const PortState& linear, double work,
                              const std::function<PortState(const PortLoads&)>& solve);

}  // namespace gapstrain::solver
