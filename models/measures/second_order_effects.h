// How far second-order effects and small turns may be relied upon.
#pragma once

#include "models/assembly/insertion.h"
#include "models/findings/findings.h"

namespace gapstrain::models {

// Of the buckling load: up to there tests hold second-order effects to the exact beam-column within 1 %.
inline constexpr double axial_load_limit = 0.6;
// Of buckling, where they are left out: what they would add is a third then.
inline constexpr double first_order_factor = 4.0;
inline constexpr double second_order_limit = 1e-6;  // relative change of the added forces
inline constexpr double large_turn_limit = 1e-6;    // relative change of what large turns add

// Share by which figures are off as motions are calculated to first order in turns: half the turn's square, by
// which a lever that turns is shorter than it is taken to be. Held to the elastica (Bisshopp and Drucker 1945, Q.
// Appl. Math. 3, p. 272): a cantilever whose tip turns by 0.46 rad under a force is off by 10 %, and this says 11
// %.
double small_turn_error(double turn);
inline constexpr double small_turn_limit = 0.05;  // ours: half of what stress agrees to (tests/PROOF.md); 0.32 rad

SecondOrderFindings findings_of(const solver::SecondOrder& found);

// Work f.q of a load on the motion that the forces bring that second-order effects add, each body by itself, N mm:
// what stiffness.h's work_on leaves out.
double work_on_added(const Assembly& assembly, const AssembledLoad& load, const solver::SecondOrder& found);

}  // namespace gapstrain::models
