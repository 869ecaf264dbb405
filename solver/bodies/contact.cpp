#include "solver/bodies/contact.h"

#include "solver/bodies/contact_friction.h"
#include "solver/bodies/contact_normal.h"
#include "solver/bodies/not_elastic_error.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace gapstrain::solver {

namespace {

void check(const ContactProblem& problem, const std::vector<char>& start, const Eigen::VectorXd& near) {
  const auto rows = problem.misfit.size();
  const auto pairs = pair_count(problem);
  if (pairs < 0 || problem.compliance.rows() != rows || problem.compliance.cols() != rows ||
      problem.friction.size() != static_cast<Eigen::Index>(problem.rubbing.size()))
    throw std::invalid_argument("the rows of a contact problem do not fit its pairs");
  if (!start.empty() && static_cast<Eigen::Index>(start.size()) != pairs)
    throw std::invalid_argument("a contact problem's start must name every pair");
  if (near.size() > 0 && near.size() != rows)
    throw std::invalid_argument("the forces near a contact problem's answer must have all its rows");
  if (!problem.compliance.allFinite() || !problem.misfit.allFinite())
    throw std::invalid_argument("a contact problem holds a number that is not finite");
  if (!(problem.friction.array() >= 0.0).all())
    throw std::invalid_argument("a coefficient of friction is negative or no number");
  auto rubbing = problem.rubbing;
  std::sort(rubbing.begin(), rubbing.end());
  if (std::adjacent_find(rubbing.begin(), rubbing.end()) != rubbing.end() ||
      (!rubbing.empty() && (rubbing.front() < 0 || rubbing.back() >= pairs)))
    throw std::invalid_argument("the rubbing pairs of a contact problem are not some of its pairs");
  if (!(problem.compliance.diagonal().array() > 0.0).all())
    throw NotElasticError("a contact pair has no compliance of its own");
}

// Lengths per square root of energy: a force times its row's, a misfit over it. The two traction rows of a pair
// share one, so that discs stay discs.
Eigen::VectorXd row_scales(const ContactProblem& problem) {
  Eigen::VectorXd squares = problem.compliance.diagonal();
  for (auto row = pair_count(problem); row < squares.size(); row += 2)
    squares.segment<2>(row).setConstant(squares.segment<2>(row).mean());
  return squares.cwiseSqrt();
}

void scale_friction(ContactProblem& unit, const Eigen::VectorXd& scales) {
  auto row = pair_count(unit);
  for (std::size_t k = 0; k < unit.rubbing.size(); ++k, row += 2)
    unit.friction(static_cast<Eigen::Index>(k)) *= scales(row) / scales(unit.rubbing[k]);
}

// The problem in scaled forces and misfits, all rows.
ContactProblem scaled(const ContactProblem& problem, const Eigen::VectorXd& scales) {
  const Eigen::VectorXd inverse = scales.cwiseInverse();
  ContactProblem unit{.compliance = inverse.asDiagonal() * problem.compliance * inverse.asDiagonal(),
                      .misfit = inverse.cwiseProduct(problem.misfit),
                      .rubbing = problem.rubbing,
                      .friction = problem.friction};
  scale_friction(unit, scales);
  return unit;
}

// Rows of all normals and of the tractions that friction allows.
std::vector<int> rows_with_force(const ContactProblem& problem) {
  std::vector<int> rows;
  const int pairs = static_cast<int>(pair_count(problem));
  for (int pair = 0; pair < pairs; ++pair) rows.push_back(pair);
  for (int k = 0; k < problem.friction.size(); ++k) {
    if (!(problem.friction(k) > 0.0)) continue;
    rows.push_back(pairs + 2 * k);
    rows.push_back(pairs + 2 * k + 1);
  }
  return rows;
}

// The problem of these rows only.
ContactProblem restricted(const ContactProblem& problem, const std::vector<int>& rows) {
  std::vector<int> rough;
  for (int k = 0; k < problem.friction.size(); ++k)
    if (problem.friction(k) > 0.0) rough.push_back(k);
  ContactProblem less{.compliance = problem.compliance(rows, rows),
                      .misfit = problem.misfit(rows),
                      .rubbing = {},
                      .friction = problem.friction(rough)};
  for (const int k : rough) less.rubbing.push_back(problem.rubbing[static_cast<std::size_t>(k)]);
  return less;
}

// Solves the normal law under the tractions at hand, so that it stands whatever friction left undone. A pair that
// this opens loses its traction, and the others are solved again.
NormalAnswer settle_normals(const ContactProblem& unit, const Eigen::MatrixXd& normal, Eigen::VectorXd& force) {
  const auto pairs = pair_count(unit);
  const auto tractions = force.size() - pairs;
  std::vector<char> closed;
  for (Eigen::Index pair = 0; pair < pairs; ++pair) closed.push_back(force(pair) > 0.0);
  int rounds = 0;
  while (true) {
    const Eigen::VectorXd gap =
        unit.misfit.head(pairs) + unit.compliance.topRightCorner(pairs, tractions) * force.tail(tractions);
    auto answer = solve_normal(normal, gap, closed);
    rounds += answer.rounds;
    bool settled = true;
    auto row = pairs;
    for (const int pair : unit.rubbing) {
      auto traction = force.segment<2>(row);
      if (!answer.closed[static_cast<std::size_t>(pair)] && !traction.isZero(0.0)) {
        traction.setZero();
        settled = false;
      }
      row += 2;
    }
    if (settled) {
      answer.rounds = rounds;
      return answer;
    }
    closed = answer.closed;
  }
}

// Closed pairs whose traction has reached its limit.
std::vector<char> slipping(const ContactProblem& problem, const ContactAnswer& answer) {
  std::vector<char> slips;
  Eigen::Index k = 0;
  for (const int pair : problem.rubbing) {
    const double mu = problem.friction(k);
    const bool closed = answer.closed[static_cast<std::size_t>(pair)] != 0;
    const double limit = std::isinf(mu) ? mu : mu * answer.pressure(pair);
    slips.push_back(closed && answer.traction.segment<2>(2 * k).norm() >= limit * (1.0 - 1e-9));
    ++k;
  }
  return slips;
}

}  // namespace

ContactAnswer solve_contact(const ContactProblem& problem, const std::vector<char>& start,
                            const Eigen::VectorXd& near, int most_rounds) {
  check(problem, start, near);
  const auto pairs = pair_count(problem);
  const auto scales = row_scales(problem);
  const auto unit = scaled(problem, scales);
  const Eigen::MatrixXd normal = unit.compliance.topLeftCorner(pairs, pairs);

  std::vector<char> closed = start;
  if (closed.empty())
    for (Eigen::Index pair = 0; pair < pairs; ++pair) closed.push_back(unit.misfit(pair) < 0.0);
  auto normals = solve_normal(normal, unit.misfit.head(pairs), closed);
  int rounds = normals.rounds;

  Eigen::VectorXd force = Eigen::VectorXd::Zero(unit.misfit.size());
  force.head(pairs) = normals.pressure;
  const auto rows = rows_with_force(problem);
  if (static_cast<Eigen::Index>(rows.size()) > pairs) {
    if (near.size() > 0) force = near.cwiseProduct(scales);
    const auto rubbed = solve_friction(restricted(unit, rows), force(rows), most_rounds);
    force(rows) = rubbed.force;
    normals = settle_normals(unit, normal, force);
    force.head(pairs) = normals.pressure;
    rounds += rubbed.rounds + normals.rounds;
  }
  force.head(pairs) = force.head(pairs).cwiseMax(0.0);  // sheds the round-off below zero

  force = force.cwiseQuotient(scales);
  const Eigen::VectorXd misfit = problem.misfit + problem.compliance * force;
  const auto violation = law_violation(unit, force.cwiseProduct(scales), misfit.cwiseQuotient(scales));
  ContactAnswer answer{.pressure = force.head(pairs),
                       .traction = force.tail(force.size() - pairs),
                       .closed = normals.closed,
                       .slips = {},
                       .rounds = rounds,
                       .complementarity = violation.normal,
                       .friction_residual = violation.friction};
  answer.slips = slipping(problem, answer);
  return answer;
}

ContactResidual contact_residual(const ContactProblem& problem, const Eigen::VectorXd& force,
                                 const Eigen::VectorXd& misfit) {
  const auto scales = row_scales(problem);
  ContactProblem unit{
      .compliance = {}, .misfit = misfit, .rubbing = problem.rubbing, .friction = problem.friction};
  scale_friction(unit, scales);
  const auto violation = law_violation(unit, force.cwiseProduct(scales), misfit.cwiseQuotient(scales));
  return {violation.normal, violation.friction};
}

}  // namespace gapstrain::solver
