// Fixed points of costly functions.
#pragma once

#include <Eigen/Core>

namespace gapstrain::solver {

// x = F(x) by Anderson's method (Walker and Ni 2011, SIAM J. Numer. Anal. 49, p. 1715, from memory): the next x is
// that combination of former ones whose residual is least. On a linear problem it does what GMRES does, so a few
// rounds do near the buckling load as well, where plain repetition would take tens.
class Mixing {
 public:
  // Of so many former changes.
  explicit Mixing(Eigen::Index most = 8) : most_(most) {}

  Eigen::VectorXd next(const Eigen::VectorXd& x, const Eigen::VectorXd& value);

 private:
  Eigen::Index most_;
  Eigen::MatrixXd residuals_, values_;
  Eigen::VectorXd last_residual_, last_value_;
};

}  // namespace gapstrain::solver
