// How surfaces that touch hold each other sideways.
#pragma once

namespace gapstrain::models {

enum class FrictionLaw {
  none,     // surfaces slide freely: a bound
  coulomb,  // they hold up to the coefficient times the pressure
  stick     // surfaces that touch do not slide: the other bound
};

// Coefficients: plate on bone 0.37, Hayes & Perren 1972, Clin Orthop 89:340 (from memory; 0.2 to 0.4 in use); bone
// on bone 0.4 to 0.5, from memory.
struct Contact {
  FrictionLaw friction = FrictionLaw::coulomb;
  double plate_on_bone = 0.37;
  double bone_on_bone = 0.45;
};

}  // namespace gapstrain::models
