// Unilateral contact with Coulomb friction on a dense compliance: complementarity, solved by methods that end.
//
// Each pair has a normal force p >= 0 that pushes its sides apart, and may have a traction t in the plane across
// the normal. With all of them in one vector x, misfits are m = misfit + compliance x: of a normal row the gap, of
// traction rows the slip since the pair last stuck.
//
//   p >= 0, m_n >= 0, p m_n = 0;      |t| <= mu p,  m_t = 0 while it sticks,  m_t = -k t with k >= 0 while it
//   slips
//
// The compliance is symmetric and positive definite (a small compliance of its own in every pair sees to that), so
// without friction the answer exists and is unique.
#pragma once

#include <Eigen/Core>

#include <vector>

namespace gapstrain::solver {

struct ContactProblem {
  Eigen::MatrixXd compliance;  // rows: normals of all pairs (c), then two traction rows a pair of `rubbing`
  Eigen::VectorXd misfit;      // the same rows; a normal's is its gap without contact forces, mm
  std::vector<int> rubbing;    // pairs with traction rows, in the order of those rows; empty: frictionless
  Eigen::VectorXd friction;    // mu of each pair of `rubbing`, >= 0; infinity: sticks wherever it is closed
};

struct ContactAnswer {
  Eigen::VectorXd pressure;        // p of each pair (c), N
  Eigen::VectorXd traction;        // t, two a pair of `rubbing`
  std::vector<char> closed;        // c: pairs in the final active set (of an unloaded touching pair p may be 0)
  std::vector<char> slips;         // one a pair of `rubbing`: closed, and its traction at the limit
  int rounds = 0;                  // active sets tried, in all
  double complementarity = 0.0;    // worst violation of the normal law, see below
  double friction_residual = 0.0;  // worst violation of the friction law, scaled alike
};

// Normal part: primal-dual active set (Hintermueller, Ito & Kunisch 2003, SIAM J Optim 13:865) from `start` (pairs
// taken closed at first; empty: those that would penetrate); on a set seen before or after 30 rounds, block
// principal pivoting with Murty's rule as the last resort (Judice & Pires 1994, Comput Oper Res 21:587), which
// ends for every positive definite matrix.
//
// Friction: Newton's method on normal and tangential laws at once (Alart & Curnier 1991, Comput Methods Appl Mech
// Eng 92:353) from the frictionless answer (or the one with which all stick, when that is nearer), so that the
// answer does not depend on `start` even where friction allows several; if that fails, the same inside the
// proximal point method (Rockafellar 1976, SIAM J Control Optim 14:877). On random problems it takes 3 to 5 rounds
// where alternation between both laws takes 12 to 16, and fails less often. With finite mu an answer always
// exists, but no method is sure to find it. With infinite mu none need exist, since a pair may have to hold
// traction just as it opens; it then holds about a hundredfold of its pressure. What is left is
// `friction_residual`. The normal law stands in any case, and open pairs carry no traction.
//
// `near`: forces of all rows that Newton's method starts from instead, for a problem that has hardly changed since
// they were its answer. `most_rounds`: of what friction may take from one start; with fewer no other start is
// tried.
//
// Residuals are dimensionless: forces p_i sqrt(W_ii) and misfits m_i / sqrt(W_ii) over the largest of both kinds,
// the violation being the distance from the forces to the projection of forces less misfits on what the law
// allows. The traction rows of a pair share the mean of their W_ii.
//
// @throw std::invalid_argument on rows, pairs or numbers that make no problem
// @throw NotElasticError if the compliance is not positive definite
inline constexpr int patient_rounds = 1000;
ContactAnswer solve_contact(const ContactProblem& problem, const std::vector<char>& start = {},
                            const Eigen::VectorXd& near = {}, int most_rounds = patient_rounds);

// Residuals, as above, of forces and misfits of all rows.
struct ContactResidual {
  double complementarity = 0.0, friction = 0.0;
};
ContactResidual contact_residual(const ContactProblem& problem, const Eigen::VectorXd& force,
                                 const Eigen::VectorXd& misfit);

}  // namespace gapstrain::solver
