// Construct stiffness between the end sections, told for the state under a stated axial load.
//
// A stiffness for small loads would take a fracture that is reduced but not pressed for an open one: its faces
// meet at rest and carry nothing, so the plate alone would be told, thirty times too soft. Here the axial load is
// applied whole, and contact followed; bending and torsion come on top of it, so small that what it has closed
// stays closed. Where nothing touches or parts on the way that is the stiffness for small loads, to the digit.
#pragma once

#include "models/assembly/insertion.h"
#include "models/findings/findings.h"

#include <array>

namespace gapstrain::models {

// The loads' sizes. The force is the largest axial compression of the construct's loads; without one, the largest
// force of any kind, or moment over the bone's half width. The moment is that force a quarter of the bone's half
// width at the fracture off its axis: the kern of a rod's section, within that of a tube (any handbook of strength
// of materials), so that faces which the force has closed stay closed. Less would be told for a few spots that
// just touch (at a tenth a finer mesh moved it by up to 16 % where friction presses in part; ours).
struct StiffnessSizes {
  double force = 0.0;   // N
  double moment = 0.0;  // N mm, about each axis
};
StiffnessSizes stiffness_sizes(const Assembly& assembly);

// The force alone, then with each moment on top in both senses.
inline constexpr std::size_t stiffness_trial_count = 7;
struct StiffnessTrial {
  std::size_t unit = 0;  // of Assembly::stiffness_loads, that is looked at
  double size = 0.0;     // of it, signed, N or N mm
  AssembledLoad load;    // `alone.work` is left out
};
std::array<StiffnessTrial, stiffness_trial_count> stiffness_trials(const Assembly& assembly,
                                                                   const StiffnessSizes& sizes);

// Whether pairs of which none touches at rest would meet under a trial. `gaps`: of all; `approach`: of all under
// each unit load.
bool any_meets(const StiffnessSizes& sizes, const Eigen::VectorXd& gaps,
               const std::array<Eigen::VectorXd, 4>& approach);

// Motion of each unit load on itself, mm or rad a unit.
using Flexibilities = std::array<double, 4>;
StiffnessFindings stiffness_of(const StiffnessSizes& sizes, const Flexibilities& flexibilities, bool with_contact);

// Of bending and torsion the sense that gives way more. `found`: what the unit load of each trial does on the
// motion of that trial over that of the force alone, over its size; in the order of stiffness_trials.
Flexibilities softer_of(const std::array<double, stiffness_trial_count>& found);

// @throw ModelError
StiffnessFindings measure_stiffness(const Assembly& assembly, const ConstructState& made);

// Work f . u of a load on the motion that forces in all rows and rigid amplitudes go with, the load acting, N mm.
double work_on(const AssembledLoad& load, const Eigen::VectorXd& forces, const Eigen::VectorXd& amplitudes);

}  // namespace gapstrain::models
