#include "solver/bodies/contact.h"
#include "solver/bodies/contact_normal.h"
#include "tests/solver/bodies/contact_problems.h"

#include <Eigen/Dense>

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

namespace gapstrain {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::Vector2d;
using Eigen::VectorXd;
using solver::ContactAnswer;
using solver::ContactProblem;
using tests::infinite;
using tests::Kind;
using tests::Random;
using tests::random_problem;

// An opinion by the plainest of methods: sweeps over the pairs, each given its own forces exactly; the traction at
// a bound by bisection on k of m_t = -k t.
VectorXd gauss_seidel(const ContactProblem& problem, int sweeps) {
  const MatrixXd& w = problem.compliance;
  const Index pairs = w.rows() - 2 * static_cast<Index>(problem.rubbing.size());
  VectorXd force = VectorXd::Zero(w.rows());
  for (int sweep = 0; sweep < sweeps; ++sweep) {
    for (Index i = 0; i < pairs; ++i)
      force(i) = std::max(0.0, force(i) - (problem.misfit(i) + w.row(i).dot(force)) / w(i, i));
    for (std::size_t k = 0; k < problem.rubbing.size(); ++k) {
      const Index row = pairs + 2 * static_cast<Index>(k);
      const Eigen::Matrix2d own = w.block<2, 2>(row, row);
      const Vector2d others =
          problem.misfit.segment<2>(row) + w.middleRows<2>(row) * force - own * force.segment<2>(row);
      const double bound = problem.friction(static_cast<Index>(k)) * force(problem.rubbing[k]);
      const auto traction = [&](double slip) -> Vector2d {
        return -(own + slip * Eigen::Matrix2d::Identity()).inverse() * others;
      };
      double low = 0.0;
      double high = bound > 0.0 ? others.norm() / bound : 0.0;
      for (int halving = 0; halving < 60 && traction(0.0).norm() > bound; ++halving) {
        const double middle = (low + high) / 2.0;
        (traction(middle).norm() > bound ? low : high) = middle;
      }
      force.segment<2>(row) = bound > 0.0 ? traction(traction(0.0).norm() > bound ? high : 0.0) : Vector2d::Zero();
    }
  }
  return force;
}

}  // namespace

TEST_CASE("principal pivoting agrees with the active set from every start", "[solver][contact]") {
  Random random(11);
  double worst = 0.0;
  for (int trial = 0; trial < 200; ++trial) {
    const int pairs = random.whole(2, 25);
    auto problem = random_problem(random, Kind::full, pairs, false);
    const VectorXd scales = problem.compliance.diagonal().cwiseSqrt();
    const MatrixXd unit =
        scales.cwiseInverse().asDiagonal() * problem.compliance * scales.cwiseInverse().asDiagonal();
    const VectorXd gap = problem.misfit.cwiseQuotient(scales);
    const auto by_sets = solver::solve_normal(unit, gap, random.set(pairs));
    const auto by_pivots = solver::block_principal_pivoting(unit, gap, random.set(pairs), trial % 4);
    CHECK(by_pivots.solved);
    worst =
        std::max(worst, (by_sets.pressure - by_pivots.pressure).norm() / std::max(1.0, by_sets.pressure.norm()));
  }
  CHECK(worst < 1e-10);
}

TEST_CASE("glued, rubbing and smooth pairs may stand side by side", "[solver][contact]") {
  Random random(21);
  int met = 0;
  int nearly = 0;
  for (int trial = 0; trial < 300; ++trial) {
    auto problem = random_problem(random, Kind::smooth, random.whole(2, 30), true, 0.5);
    for (Index k = 0; k < problem.friction.size(); ++k) {
      const int kind = random.whole(0, 2);
      if (kind == 0) problem.friction(k) = infinite;
      if (kind == 1) problem.friction(k) = 0.0;
    }
    const auto answer = solver::solve_contact(problem);
    CHECK(answer.complementarity < 1e-9);
    for (std::size_t k = 0; k < problem.rubbing.size(); ++k) {
      const auto traction = answer.traction.segment<2>(2 * static_cast<Index>(k));
      const bool closed = answer.closed[static_cast<std::size_t>(problem.rubbing[k])] != 0;
      if (!closed || problem.friction(static_cast<Index>(k)) == 0.0) CHECK(traction.isZero(0.0));
    }
    met += answer.friction_residual < 1e-9;
    problem.friction = problem.friction.cwiseMin(100.0);
    nearly += answer.friction_residual >= 1e-9 && tests::breach(problem, answer) < 1e-9;
  }
  // In two problems a glued pair would have to hold traction without pressure: with mu = 10, 100, 1000 its
  // pressure falls as 1 / mu while its traction stays.
  CHECK(met == 298);
  CHECK(nearly == 2);
}

TEST_CASE("contact answers agree with plain Gauss-Seidel sweeps", "[solver][contact]") {
  Random random(2);
  for (int trial = 0; trial < 30; ++trial) {
    const int pairs = random.whole(2, 16);
    const auto problem = random_problem(random, Kind::smooth, pairs, trial % 2 == 1);
    const auto answer = solver::solve_contact(problem);
    const VectorXd scales = problem.compliance.diagonal().cwiseSqrt();
    VectorXd force(problem.misfit.size());
    force << answer.pressure, answer.traction;
    const VectorXd sweeps = gauss_seidel(problem, 400);
    const double size = std::max(1e-300, force.cwiseProduct(scales).norm());
    CHECK((force - sweeps).cwiseProduct(scales).norm() / size < 1e-7);
  }
}

TEST_CASE("the laws hold on ten thousand random problems", "[solver][contact]") {
  Random random(1);
  int with_friction = 0;
  int met = 0;
  double worst_normal = 0.0;
  double worst_breach = 0.0;
  double most_tension = 0.0;
  for (int trial = 0; trial < 10000; ++trial) {
    const auto kind = static_cast<Kind>(trial % 3);
    const bool rubs = trial % 2 == 1;
    const auto problem = random_problem(random, kind, random.whole(2, 40), rubs);
    const auto answer = solver::solve_contact(problem);
    worst_normal = std::max(worst_normal, answer.complementarity);
    most_tension = std::max(most_tension, -answer.pressure.minCoeff());
    with_friction += rubs;
    if (answer.friction_residual < 1e-9) {
      met += rubs;
      worst_breach = std::max(worst_breach, tests::breach(problem, answer));
    }
  }
  CHECK(worst_normal < 1e-9);
  CHECK(most_tension <= 0.0);
  CHECK(with_friction == 5000);
  CHECK(met == with_friction);
  CHECK(worst_breach < 1e-8);
}

TEST_CASE("the answer does not depend on how pairs are numbered", "[solver][contact]") {
  Random random(4);
  double worst = 0.0;
  for (int trial = 0; trial < 200; ++trial) {
    const int pairs = random.whole(2, 30);
    const auto problem = random_problem(random, Kind::smooth, pairs, true, 0.6);
    const auto straight = solver::solve_contact(problem);

    const auto order = random.order(pairs);
    const auto rubbing_order = random.order(static_cast<int>(problem.rubbing.size()));
    std::vector<int> rows = order;
    ContactProblem mixed;
    for (const int k : rubbing_order) {
      const int pair = problem.rubbing[static_cast<std::size_t>(k)];
      mixed.rubbing.push_back(static_cast<int>(std::find(order.begin(), order.end(), pair) - order.begin()));
      rows.push_back(pairs + 2 * k);
      rows.push_back(pairs + 2 * k + 1);
    }
    mixed.compliance = problem.compliance(rows, rows);
    mixed.misfit = problem.misfit(rows);
    mixed.friction = problem.friction(rubbing_order);
    const auto answer = solver::solve_contact(mixed);
    ContactAnswer expected = answer;
    VectorXd force(problem.misfit.size());
    force << straight.pressure, straight.traction;
    expected.pressure = force(rows).head(pairs);
    expected.traction = force(rows).tail(force.size() - pairs);
    worst = std::max(worst, tests::difference(expected, answer));
  }
  CHECK(worst < 1e-9);
}

TEST_CASE("the answer does not depend on the set it is looked for from", "[solver][contact]") {
  Random random(6);
  double worst = 0.0;
  for (int trial = 0; trial < 300; ++trial) {
    const int pairs = random.whole(2, 40);
    const auto problem = random_problem(random, trial % 3 == 0 ? Kind::full : Kind::smooth, pairs, trial % 2 == 1);
    const auto cold = solver::solve_contact(problem);
    const auto warm = solver::solve_contact(problem, random.set(pairs));
    worst = std::max(worst, tests::difference(cold, warm));
    const auto again = solver::solve_contact(problem, cold.closed);
    worst = std::max(worst, tests::difference(cold, again));
    if (problem.rubbing.empty()) CHECK(again.rounds == 1);
  }
  CHECK(worst < 1e-9);
}

}  // namespace gapstrain
