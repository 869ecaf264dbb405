// Forces and stresses in the screws' shafts.
#pragma once

#include "models/assembly/assembly.h"
#include "models/findings/findings.h"

#include <vector>

namespace gapstrain::models {

// What the head's side of a cut through a shaft does to the tip's side, about the cut's centre.
struct ShaftForce {
  Eigen::Vector3d force;   // N
  Eigen::Vector3d moment;  // N mm
};

// `link`: the six forces of the segment's link; `place`: on the shaft's axis.
ShaftForce shaft_force(const ShaftSegment& segment, const Eigen::VectorXd& link, const Eigen::Vector3d& place);

// Stresses of a solid round shaft under it, MPa.
struct ShaftStress {
  double direct = 0.0;      // largest fibre stress along the axis: axial and bending
  double equivalent = 0.0;  // von Mises, with torsion
};
ShaftStress shaft_stress(const ShaftForce& force, const Eigen::Vector3d& axis, double radius);

// Von Mises stress of a screw's core at a station, MPa.
double core_stress(const ScrewStation& cut, const ScrewSize& size);

// The worst of a screw's shaft under forces in all rows. Bending is linear along a piece, so its ends tell.
struct ShaftPeak : ShaftStress {
  double axial_at_head = 0.0;  // tension where the head sits, N
};
ShaftPeak shaft_peak(const Assembly& assembly, const CandidateScrew& candidate, const Eigen::VectorXd& forces);

// What a screw does to the walls it passes, under forces in all rows: near, far; a lag screw's far one only.
std::vector<CortexForce> cortex_forces(const Assembly& assembly, const CandidateScrew& candidate,
                                       const Eigen::VectorXd& forces);

// The stress cycle between two forces at a cut of a solid round shaft: at the place of its surface where
// the equivalent amplitude by Goodman is largest, or the amplitude when its strength is not known. Moments are
// subtracted as vectors: a bending that only turns counts.
StressCycle shaft_cycle(const ShaftForce& at_rest, const ShaftForce& loaded, const Eigen::Vector3d& axis,
                        double radius, const Metal& metal);

// Forces at the cuts of a screw's shaft where its core is most likely to tire: linear in what acts as long as
// nothing that touches changes.
struct ScrewCuts {
  ShaftForce head;                   // where it leaves its head's seat
  std::vector<ShaftForce> cortices;  // where it enters or leaves a cortex that it is threaded in
};

// A screw's core.
struct CoreSection {
  Eigen::Vector3d axis;
  double radius = 0.0;  // mm
  Metal metal;
};
CoreSection core_section(const PlannedScrew& planned);

// Of a screw's core, nominal, without the notch of thread and head.
struct ScrewCycles {
  StressCycle head;    // where it leaves its head's seat
  StressCycle thread;  // where it enters or leaves a cortex that it is threaded in, the worst of these places
};
ScrewCycles screw_cycles(const ScrewCuts& at_rest, const ScrewCuts& loaded, const CoreSection& core);
// Forces in all rows.
ScrewCycles screw_cycles(const Assembly& assembly, const CandidateScrew& candidate, const Eigen::VectorXd& at_rest,
                         const Eigen::VectorXd& loaded);

// Of each chosen screw.
std::vector<ScrewCuts> measure_screw_cuts(const Assembly& assembly, const std::vector<int>& chosen,
                                          const solver::Solution& solution);
std::vector<ScrewCycles> measure_screw_cycles(const Assembly& assembly, const std::vector<int>& chosen,
                                              const solver::Solution& at_rest, const solver::Solution& loaded);

// One entry a chosen screw, in order, but for its head's cycle. Sign: what the head's side does to the tip's side.
std::vector<ScrewFindings> measure_screws(const Assembly& assembly, const std::vector<int>& chosen,
                                          const solver::Solution& solution);

}  // namespace gapstrain::models
