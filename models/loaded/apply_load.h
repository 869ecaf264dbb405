// A construct under a load, on top of how it was made.
#pragma once

#include "models/assembly/insertion.h"

namespace gapstrain::models {

// All forces on ports under a load: itself, and what second-order effects add (SecondOrder::forces).
solver::PortLoads loads_with(const solver::PortLoads& load, const solver::PortLoads& added);

// By how much a body turns as a whole beyond which turns are followed as large, rad.
inline constexpr double large_turn = 0.1;
// The largest such turn between two states, by their rigid amplitudes.
double largest_body_turn(const Assembly& assembly, const Eigen::VectorXd& made, const Eigen::VectorXd& loaded);
bool follows_large_turns(const Assembly& assembly, double turn);

// When second-order effects are looked for.
solver::SecondOrderRule second_order_rule(const Construct& construct);

// Whether a load is held by nothing but hands.
bool pulls_at_hands(const solver::PressedForces& pressed, const AssembledLoad& load);

enum class Metals { as_given, elastic };  // elastic: what has bent stays bent, and nothing bends further for good

// The same construct under a load on top of a state, with the load's second-order effects and large turns where
// the construct asks for them. @throw solver::MechanismError when nothing but hands would hold it.
ConstructState apply_load(const Assembly& assembly, const ConstructState& state, const AssembledLoad& load,
                          Metals metals = Metals::as_given);

}  // namespace gapstrain::models
