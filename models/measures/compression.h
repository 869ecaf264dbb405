// What the steps of making a construct did: force across the fracture, travel, preloads, locked-in stress.
#pragma once

#include "models/assembly/insertion.h"
#include "models/findings/findings.h"

#include <vector>

namespace gapstrain::models {

// One entry a step. `with_stress`: else the plate's peak, which costs more than all else, is left at nothing.
std::vector<StepFindings> measure_steps(const Assembly& assembly, const Procedure& procedure,
                                        const std::vector<StepState>& states, bool with_stress = true);

// Ball-headed screws that are tight, and clamps, in a state of these screws and holds.
std::vector<HeldForce> measure_held(const Assembly& assembly, const StepState& step, const ConstructState& state);

// Force across the fracture, square to the cut.
Force force_across(const Assembly& assembly, const ConstructState& state);

// The same after a procedure's last step.
Force final_force(const Assembly& assembly, const Procedure& procedure);

}  // namespace gapstrain::models
