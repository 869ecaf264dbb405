// Contact with Coulomb friction: the normal and the tangential laws solved at once.
//
// Problems are scaled as solve_contact does it: a pair's normal row of the compliance has a unit diagonal and its
// traction rows have unit diagonals on average, so that forces and misfits add up. Every mu is above zero.
#pragma once

#include "solver/bodies/contact.h"

#include <Eigen/Core>

namespace gapstrain::solver {

Eigen::Index pair_count(const ContactProblem& problem);

// Worst violation of the laws: the distance from the forces x to the projection of x - m, of a pressure on p >= 0,
// of a traction on the disc of radius mu p (of an open pair: on zero), over the largest force or misfit.
struct LawViolation {
  double normal = 0.0;
  double friction = 0.0;
};
LawViolation law_violation(const ContactProblem& problem, const Eigen::VectorXd& force,
                           const Eigen::VectorXd& misfit);

struct FrictionAnswer {
  Eigen::VectorXd force;
  double violation = 0.0;  // the larger of both
  int rounds = 0;          // linear systems solved
};

// Newton's method on the projections, by sets of open, closed, sticking and slipping pairs: Alart & Curnier 1991,
// Comput Methods Appl Mech Eng 92:353. The best of its iterates.
FrictionAnswer coupled_newton(const ContactProblem& problem, const Eigen::VectorXd& start, int most_rounds);

// Newton's method, and where it goes astray, Newton's method inside the proximal point method: Rockafellar 1976,
// SIAM J Control Optim 14:877. Each step adds a softness to every row that costs nothing at the last step's
// forces; the softer the pairs, the surer Newton's way. Starts from `given`, or, where that is far off, from
// forces with which what it presses would stick, if they are nearer. If that does not end, it is tried from
// others.
//
// Where pairs of infinite mu leave no answer, forces for mu = 100 at those pairs instead, `violation` being that
// of the best try with infinite mu.
// `most_rounds`: from each start; fewer than patient_rounds: from one.
FrictionAnswer solve_friction(const ContactProblem& problem, const Eigen::VectorXd& given,
                              int most_rounds = patient_rounds);

}  // namespace gapstrain::solver
