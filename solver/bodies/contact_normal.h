// The frictionless part of contact: the linear complementarity problem p >= 0, g = gap + W p >= 0, p g = 0.
//
// `compliance` W is symmetric and positive definite with a unit diagonal (see solve_contact for the scaling), so
// that forces and gaps compare without more ado: a pair is at fault if its force or gap is below -1e-11 of the
// largest of all.
#pragma once

#include <Eigen/Core>

#include <vector>

namespace gapstrain::solver {

struct NormalAnswer {
  Eigen::VectorXd pressure;
  std::vector<char> closed;
  int rounds = 0;       // active sets tried
  bool solved = false;  // no pair is at fault
};

// Primal-dual active set: all pairs at fault change sides at once. Quick, but may come back to a set; then, or
// after 30 rounds, it stops unsolved. Hintermueller, Ito & Kunisch 2003, SIAM J Optim 13:865. @throw
// NotElasticError
NormalAnswer primal_dual_active_set(const Eigen::MatrixXd& compliance, const Eigen::VectorXd& gap,
                                    std::vector<char> start);

// Block principal pivoting: the same exchange while the number of pairs at fault falls, with `patience` rounds'
// grace, and after that only the last pair at fault until it falls again (Murty's rule, which visits no set
// twice). Judice & Pires 1994, Comput Oper Res 21:587. @throw NotElasticError
NormalAnswer block_principal_pivoting(const Eigen::MatrixXd& compliance, const Eigen::VectorXd& gap,
                                      std::vector<char> start, int patience = 10);

// The first, and the second from where the first got stuck.
NormalAnswer solve_normal(const Eigen::MatrixXd& compliance, const Eigen::VectorXd& gap,
                          const std::vector<char>& start);

}  // namespace gapstrain::solver
