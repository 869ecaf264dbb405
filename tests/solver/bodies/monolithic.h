// One sparse solve of the whole model, written once to hold the condensed path against.
#pragma once

#include "solver/bodies/system.h"

#include <vector>

namespace gapstrain::tests {

struct MonolithicBody {
  const solver::SparseMatrix* stiffness;  // lower triangle
  const solver::Ports* ports;
};

struct MonolithicSolution {
  std::vector<Eigen::MatrixXd> displacements;  // (6n x load cases) a body
  std::vector<Eigen::MatrixXd> link_forces;    // a link each, in the order given
};

// `shared`: among the links given. [K  RB; (RB)^T  -F] with all bodies' full stiffness and the links' forces as
// multipliers, by sparse LU.
MonolithicSolution solve_monolithic(const std::vector<MonolithicBody>& bodies,
                                    const std::vector<solver::Link>& links, const solver::PortLoads& loads,
                                    const std::vector<solver::SharedFlexibility>& shared = {});

}  // namespace gapstrain::tests
