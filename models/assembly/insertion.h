// A construct made step by step: each link is free of stress at the moment it is put in, in the state the
// construct is then in; what was put in stays. The state after the last step is what service loads come on top of.
#pragma once

#include "models/assembly/assembly.h"
#include "models/assembly/procedure.h"
#include "solver/bodies/yielding.h"

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
      straight;          // where it is in: what would be in place under the load without it
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

// B^T q of all rows with what has bent for good in plates: how surfaces lie against each other.
Eigen::VectorXd deformations_with_bends(const Assembly& assembly, const ConstructState& state);

// Of the cortices that a screw's thread holds in, along the screw.
Length engaged_thread(const CandidateScrew& screw);

// States after each step; parts that nothing holds yet stay where the hand holds them.
// @pre check() reports no error for the steps.
std::vector<StepState> carry_out(const Assembly& assembly, const Procedure& procedure);

// Slip of each pair's sides against each other since they met, mm; 0 for pairs that are apart.
Eigen::VectorXd slips(const Assembly& assembly, const ConstructState& state);

// All forces on ports under a load: itself, and what second-order effects add (SecondOrder::forces).
solver::PortLoads loads_with(const solver::PortLoads& load, const solver::PortLoads& added);

// When second-order effects are looked for.
solver::SecondOrderRule second_order_rule(const Construct& construct);

// Whether a load is held by nothing but hands.
bool pulls_at_hands(const solver::PressedForces& pressed, const AssembledLoad& load);

enum class Metals { as_given, elastic };  // elastic: what has bent stays bent, and nothing bends further for good

// The same construct under a load on top of a state, with the load's second-order effects where the construct asks
// for them. @throw solver::MechanismError when nothing but hands would
// hold it.
ConstructState apply_load(const Assembly& assembly, const ConstructState& state, const AssembledLoad& load,
                          Metals metals = Metals::as_given);

}  // namespace gapstrain::models
