#include "solver/bodies/contact_friction.h"

#include "solver/bodies/not_elastic_error.h"

#include <Eigen/Cholesky>
#include <Eigen/LU>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace gapstrain::solver {

namespace {

constexpr double converged = 1e-11;
constexpr double good_enough = 1e-10;  // from here on only round-off can stand in the way of more

// First traction row of each pair, -1 without.
std::vector<int> traction_rows(const ContactProblem& problem) {
  std::vector<int> rows(static_cast<std::size_t>(pair_count(problem)), -1);
  int row = static_cast<int>(rows.size());
  for (const int pair : problem.rubbing) {
    rows[static_cast<std::size_t>(pair)] = row;
    row += 2;
  }
  return rows;
}

Eigen::Vector2d project_on_disc(const Eigen::Vector2d& vector, double radius) {
  const double length = vector.norm();
  if (length <= radius) return vector;
  return vector * (radius / length);
}

// An unknown of Newton's step and the equation that belongs to it. An open pair has none. A closed one has its
// pressure, with zero gap; if it sticks, both tractions, with zero slip; if it slips, the pressure takes the
// traction along the slip with it, and what remains is the traction across.
struct Unknown {
  int row = -1;                    // of the force; -1: the traction across the slip
  int traction = -1;               // first traction row of a slipping pair
  Eigen::Vector2d per_unit{0, 0};  // its tractions per unit of this unknown
  double rim = 0.0;                // of a traction across: radius over the length of t - m
};

std::vector<Unknown> unknowns_at(const ContactProblem& problem, const std::vector<int>& traction_of,
                                 const Eigen::VectorXd& force, const Eigen::VectorXd& misfit) {
  std::vector<Unknown> unknowns;
  const int pairs = static_cast<int>(traction_of.size());
  for (int pair = 0; pair < pairs; ++pair) {
    const double pressure = force(pair) - misfit(pair);
    if (!(pressure > 0.0)) continue;
    const int row = traction_of[static_cast<std::size_t>(pair)];
    if (row < 0) {
      unknowns.push_back({.row = pair});
      continue;
    }
    const double mu = problem.friction((row - pairs) / 2);
    const Eigen::Vector2d tried = force.segment<2>(row) - misfit.segment<2>(row);
    const double length = tried.norm();
    if (length <= mu * pressure) {
      for (const int sticking : {pair, row, row + 1}) unknowns.push_back({.row = sticking});
    } else {
      const Eigen::Vector2d along = tried / length;
      unknowns.push_back({.row = pair, .traction = row, .per_unit = mu * along});
      unknowns.push_back({.traction = row, .per_unit = {-along.y(), along.x()}, .rim = mu * pressure / length});
    }
  }
  return unknowns;
}

// Misfits per unit of each unknown, all rows.
Eigen::MatrixXd influence(const Eigen::MatrixXd& compliance, const std::vector<Unknown>& unknowns) {
  Eigen::MatrixXd columns(compliance.rows(), static_cast<Eigen::Index>(unknowns.size()));
  Eigen::Index j = 0;
  for (const auto& unknown : unknowns) {
    auto column = columns.col(j++);
    if (unknown.row >= 0)
      column = compliance.col(unknown.row);
    else
      column.setZero();
    if (unknown.traction >= 0) column += compliance.middleCols<2>(unknown.traction) * unknown.per_unit;
  }
  return columns;
}

Eigen::VectorXd newton_step(const ContactProblem& problem, const std::vector<Unknown>& unknowns,
                            const Eigen::MatrixXd& columns) {
  const auto size = static_cast<Eigen::Index>(unknowns.size());
  Eigen::MatrixXd matrix(size, size);
  Eigen::VectorXd right(size);
  bool symmetric = true;
  for (Eigen::Index i = 0; i < size; ++i) {
    const auto& unknown = unknowns[static_cast<std::size_t>(i)];
    if (unknown.row >= 0) {
      matrix.row(i) = columns.row(unknown.row);
      right(i) = -problem.misfit(unknown.row);
    } else {
      // The direction of t - m is that of t, linearised: rim m_across + (1 - rim) t_across = 0.
      const Eigen::Vector2d across = unknown.rim * unknown.per_unit;
      matrix.row(i) = across.transpose() * columns.middleRows<2>(unknown.traction);
      matrix(i, i) += 1.0 - unknown.rim;
      right(i) = -across.dot(problem.misfit.segment<2>(unknown.traction));
      symmetric = false;
    }
  }
  if (symmetric) {
    const Eigen::LLT<Eigen::MatrixXd> cholesky(matrix);
    if (cholesky.info() != Eigen::Success)
      throw NotElasticError("the compliance between the contact pairs is not positive definite");
    return cholesky.solve(right);
  }
  return matrix.partialPivLu().solve(right);
}

double violation_of(const ContactProblem& problem, const Eigen::VectorXd& force) {
  const auto worst = law_violation(problem, force, problem.misfit + problem.compliance * force);
  return std::max(worst.normal, worst.friction);
}

// Forces with which all pairs that press in `start` would stick, cut to what the laws allow. On a steep cut that
// is far nearer to the answer than what slides freely.
Eigen::VectorXd stuck(const ContactProblem& problem, const Eigen::VectorXd& start) {
  const auto traction_of = traction_rows(problem);
  std::vector<int> rows;
  for (int pair = 0; pair < static_cast<int>(traction_of.size()); ++pair) {
    if (!(start(pair) > 0.0)) continue;
    rows.push_back(pair);
    const int row = traction_of[static_cast<std::size_t>(pair)];
    if (row >= 0) rows.insert(rows.end(), {row, row + 1});
  }
  Eigen::VectorXd force = Eigen::VectorXd::Zero(start.size());
  const Eigen::LLT<Eigen::MatrixXd> cholesky(Eigen::MatrixXd(problem.compliance(rows, rows)));
  if (rows.empty() || cholesky.info() != Eigen::Success) return force;
  force(rows) = -cholesky.solve(problem.misfit(rows));
  const auto pairs = pair_count(problem);
  force.head(pairs) = force.head(pairs).cwiseMax(0.0);
  Eigen::Index row = pairs;
  for (std::size_t k = 0; k < problem.rubbing.size(); ++k, row += 2) {
    const double pressure = force(problem.rubbing[k]);
    const double radius = pressure > 0.0 ? problem.friction(static_cast<Eigen::Index>(k)) * pressure : 0.0;
    force.segment<2>(row) = project_on_disc(force.segment<2>(row), radius);
  }
  return force;
}

FrictionAnswer proximal_newton(const ContactProblem& problem, const Eigen::VectorXd& start, int most_rounds) {
  // Found by trying on some hundred thousand random problems, most of them far more coupled than bones are.
  constexpr int newton_rounds = 20;
  constexpr int polish_rounds = 8;
  auto best = coupled_newton(problem, start, newton_rounds);
  int rounds = best.rounds;
  double softness = 0.1;
  Eigen::VectorXd centre = start;
  while (best.violation > good_enough && rounds < most_rounds) {
    ContactProblem soft = problem;
    soft.compliance.diagonal().array() += softness;
    soft.misfit -= softness * centre;
    const auto step = coupled_newton(soft, centre, newton_rounds);
    rounds += step.rounds;
    if (step.violation > 1e-9) {
      softness = std::min(8.0 * softness, 10.0);
      continue;
    }
    centre = step.force;
    softness *= 0.25;
    auto polished = coupled_newton(problem, centre, polish_rounds);
    rounds += polished.rounds;
    if (polished.violation < best.violation) best = std::move(polished);
  }
  best.rounds = rounds;
  return best;
}

}  // namespace

Eigen::Index pair_count(const ContactProblem& problem) {
  return problem.misfit.size() - 2 * static_cast<Eigen::Index>(problem.rubbing.size());
}

LawViolation law_violation(const ContactProblem& problem, const Eigen::VectorXd& force,
                           const Eigen::VectorXd& misfit) {
  if (force.size() == 0) return {};
  const double largest = std::max(force.cwiseAbs().maxCoeff(), misfit.cwiseAbs().maxCoeff());
  if (largest == 0.0) return {};
  const auto pairs = pair_count(problem);
  LawViolation worst;
  worst.normal = force.head(pairs).cwiseMin(misfit.head(pairs)).cwiseAbs().maxCoeff() / largest;
  auto row = pairs;
  for (std::size_t k = 0; k < problem.rubbing.size(); ++k, row += 2) {
    const double pressure = force(problem.rubbing[k]);
    const double radius = pressure > 0.0 ? problem.friction(static_cast<Eigen::Index>(k)) * pressure : 0.0;
    const Eigen::Vector2d traction = force.segment<2>(row);
    const Eigen::Vector2d nearest = project_on_disc(traction - misfit.segment<2>(row), radius);
    worst.friction = std::max(worst.friction, (traction - nearest).norm() / largest);
  }
  return worst;
}

FrictionAnswer coupled_newton(const ContactProblem& problem, const Eigen::VectorXd& start, int most_rounds) {
  const auto traction_of = traction_rows(problem);
  const auto violation = [&problem](const Eigen::VectorXd& force, const Eigen::VectorXd& misfit) {
    const auto worst = law_violation(problem, force, misfit);
    return std::max(worst.normal, worst.friction);
  };
  Eigen::VectorXd force = start;
  Eigen::VectorXd misfit = problem.misfit + problem.compliance * force;
  FrictionAnswer best{force, violation(force, misfit), 0};
  while (best.rounds < most_rounds && best.violation > converged) {
    ++best.rounds;
    const auto unknowns = unknowns_at(problem, traction_of, force, misfit);
    const auto columns = influence(problem.compliance, unknowns);
    const Eigen::VectorXd step = newton_step(problem, unknowns, columns);
    if (!step.allFinite()) break;  // a singular step: the caller goes another way

    force.setZero();
    Eigen::Index j = 0;
    for (const auto& unknown : unknowns) {
      if (unknown.row >= 0) force(unknown.row) = step(j);
      if (unknown.traction >= 0) force.segment<2>(unknown.traction) += unknown.per_unit * step(j);
      ++j;
    }
    misfit = problem.misfit + columns * step;
    const double now = violation(force, misfit);
    if (now < best.violation) {
      best.force = force;
      best.violation = now;
    } else if (best.violation < good_enough) {
      break;
    }
  }
  return best;
}

FrictionAnswer solve_friction(const ContactProblem& problem, const Eigen::VectorXd& given, int most_rounds) {
  constexpr double far_off = 0.05;
  Eigen::VectorXd start = given;
  if (const double violation = violation_of(problem, given); violation > far_off) {
    Eigen::VectorXd all_stick = stuck(problem, given);
    if (violation_of(problem, all_stick) < violation) start = std::move(all_stick);
  }
  const int most_rounds_glued = std::min(most_rounds, 300);
  const bool glued = problem.friction.array().isInf().any();
  auto answer = proximal_newton(problem, start, glued ? most_rounds_glued : most_rounds);
  // A few problems hold the iteration in a loop about their first start. Where glued pairs leave no answer at all,
  // other starts are in vain.
  for (const double other : {0.0, 0.5, 2.0}) {
    if (glued || answer.violation <= good_enough || most_rounds < patient_rounds) break;
    auto again = proximal_newton(problem, other * start, most_rounds);
    const int rounds = answer.rounds + again.rounds;
    if (again.violation < answer.violation) answer = std::move(again);
    answer.rounds = rounds;
  }
  if (!glued || answer.violation <= good_enough) return answer;

  ContactProblem rough = problem;  // in the sense of friction that is high, but finite
  auto held = start;
  for (const double most : {1.0, 3.0, 10.0, 30.0, 100.0}) {
    rough.friction = problem.friction.cwiseMin(most);
    auto step = proximal_newton(rough, held, most_rounds_glued);
    answer.rounds += step.rounds;
    held = std::move(step.force);
  }
  answer.force = std::move(held);
  return answer;
}

}  // namespace gapstrain::solver
