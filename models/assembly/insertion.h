// A construct made step by step: each link is free of stress at the moment it is put in, in the state the
// construct is then in; what was put in stays. The state after the last step is what service loads come on top of
// (models/loaded).
#pragma once

#include "models/assembly/assembly.h"
#include "models/assembly/procedure.h"
#include "solver/bodies/yielding.h"
#include "solver/motion/large_motion.h"
#include "solver/motion/second_order.h"

#include <optional>
#include <vector>

namespace gapstrain::models {

// What is in place at some moment, and the state it is in.
struct ConstructState {
  solver::Setting setting;
  solver::PressedState pressed;
  solver::Yielded yielded;      // of Assembly::yields
  double yield_residual = 0.0;  // solver/bodies/yielding.h
  // Under a load that makes sections flow: what would be in place had they not. Strength over demand, and cycles
  // that come again and again, are judged by it: unloading is elastic.
  std::optional<solver::PressedState> elastic;
  solver::SecondOrder second_order;  // of a load
  std::optional<solver::PressedState>
      straight;                              // where it is in: what would be in place under the load without it
  std::optional<solver::LargeMotion> large;  // of a load, where it turns parts far
  Eigen::MatrixX2d met;  // of each pair: its sides' place sideways when they were last apart, mm
};

// The end of a step.
struct StepState : ConstructState {
  std::vector<int> screws;     // in, as positions in assembly.screws, in the order they went in
  std::vector<int> tightened;  // those of them that are tight
  std::vector<int> holds;      // in, as positions in assembly.holds
};

inline const solver::PressedState& demanded(const ConstructState& state) {
  return state.elastic ? *state.elastic : state.pressed;
}

// What links see of all bodies' motions, and the same with what has bent for good in plates: how surfaces lie
// against each other.
Eigen::VectorXd link_deformations(const Assembly& assembly, const ConstructState& state);
Eigen::VectorXd deformations_with_bends(const Assembly& assembly, const ConstructState& state);

// Of the cortices that a screw's thread holds in, along the screw.
Length engaged_thread(const CandidateScrew& screw);

// States after each step; parts that nothing holds yet stay where the hand holds them.
// @pre check() reports no error for the steps.
std::vector<StepState> carry_out(const Assembly& assembly, const Procedure& procedure);

// Slip of each pair's sides against each other since they met, mm; 0 for pairs that are apart.
Eigen::VectorXd slips(const Assembly& assembly, const ConstructState& state);

// Finds what is in place under these forces, from its setting and what has yielded so far.
void press_on(const Assembly& assembly, const solver::PortLoads& loads, ConstructState& state);

// Notes where pairs that are apart are sideways: the place from which they will have slipped once they meet.
void note_meeting(const Assembly& assembly, const Eigen::VectorXd& deformations, ConstructState& state);

// What was made, once links are as elastic as in another assembly of the same bodies and links: each from the same
// length as before.
ConstructState with_links_of(const Assembly& assembly, const ConstructState& made);

}  // namespace gapstrain::models
