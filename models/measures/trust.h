// The evidence of a solution: does it satisfy its own equations, and does the model hold where it went.
#pragma once

#include "models/assembly/insertion.h"
#include "models/findings/findings.h"

#include <array>
#include <vector>

namespace gapstrain::models {

// All loads of a construct solved: one state a load, displacements of each body with a column a load (6n x loads).
struct SolvedLoads {
  std::vector<ConstructState> states;
  std::array<Eigen::MatrixXd, 3> displacements;
};

// Largest relative violation of the friction law that passes.
inline constexpr double friction_law_limit = 1e-5;

// `steps`: states after each step. `loads`: what was measured of each load, in the order of `solved`.
Trust measure_trust(const Assembly& assembly, const std::vector<StepState>& steps, const SolvedLoads& solved,
                    const std::vector<LoadFindings>& loads);

}  // namespace gapstrain::models
