// The evidence of a solution: does it satisfy its own equations, and does the model hold where it went.
#pragma once

#include "models/assembly/insertion.h"
#include "models/findings/findings.h"

#include <vector>

namespace gapstrain::models {

// All loads of a construct solved: one state a load, displacements of each body with a column a load (6n x loads).
struct SolvedLoads {
  std::vector<ConstructState> states;
  std::vector<Eigen::MatrixXd> displacements;
};

// What passes at most, of findings and of outcomes alike.
inline constexpr double balance_limit = 1e-8;       // relative: forces of each body
inline constexpr double contact_limit = 1e-8;       // relative: tension or penetration
inline constexpr double yield_law_limit = 1e-4;     // share by which a section bears more than its strength
inline constexpr double friction_law_limit = 1e-5;  // relative: violation of the friction law
inline constexpr double turn_limit = 0.1;           // rad: turns small enough for a small-displacement calculation

// `steps`: states after each step. `loads`: what was measured of each load, in the order of `solved`.
Trust measure_trust(const Assembly& assembly, const std::vector<StepState>& steps, const SolvedLoads& solved,
                    const std::vector<LoadFindings>& loads);

}  // namespace gapstrain::models
