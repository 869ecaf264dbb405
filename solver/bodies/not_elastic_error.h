// The fault of a body that is no elastic body.
#pragma once

#include <stdexcept>

namespace gapstrain::solver {

// A stiffness that is not positive definite where it must be: a hinge, a loose piece, a patch that nothing holds.
struct NotElasticError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

}  // namespace gapstrain::solver
