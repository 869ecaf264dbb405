// Outcomes with screws as they are taken and, on the same bodies, as soft in bone as is to be reckoned with.
#pragma once

#include "models/layouts/construct_solver.h"

#include <optional>
#include <vector>

namespace gapstrain::models {

// The assembly of the same construct and candidates with its screws at the soft bound; nothing where they are
// taken as soft as that already. @pre have_same_bodies of what `prepared` was made for
std::optional<Assembly> assemble_soft(const std::shared_ptr<const PreparedBodies>& prepared,
                                      const Construct& construct, const std::vector<Screw>& candidates);

class SolverAtBounds {
 public:
  // One a thread. `soft`: of assemble_soft, or null without one. All are borrowed; `peak` serves both.
  SolverAtBounds(const Assembly& assembly, const Assembly* soft, const PeakStress& peak);

  // As ConstructSolver::solve of the construct as it is taken, with Outcome::soft_screws. At the soft bound a
  // construct that nothing holds, or that fails a check, leaves that empty.
  Outcome solve(const std::vector<int>& chosen);

 private:
  ConstructSolver taken_;
  std::optional<ConstructSolver> soft_;
};

}  // namespace gapstrain::models
