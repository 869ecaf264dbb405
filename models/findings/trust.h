// The evidence of a solution: does it satisfy its own equations, and does the model hold where it went.
#pragma once

#include "models/build/assembly.h"
#include "models/findings/findings.h"

#include <array>
#include <vector>

namespace gapstrain::models {

// All loads of a construct solved: one solution a load, displacements of each body with a column a load (6n x
// loads).
struct SolvedLoads {
  std::vector<solver::Solution> solutions;
  std::array<Eigen::MatrixXd, 3> displacements;
};

// `loads`: what was measured of each, in the same order.
Trust measure_trust(const Assembly& assembly, const SolvedLoads& solved, const std::vector<LoadFindings>& loads);

}  // namespace gapstrain::models
