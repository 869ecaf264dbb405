#include "solver/bodies/contact.h"

#include "solver/bodies/contact_normal.h"
#include "solver/bodies/not_elastic_error.h"
#include "tests/solver/bodies/contact_problems.h"

#include <Eigen/Dense>

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

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

ContactProblem frictionless(MatrixXd compliance, VectorXd gap) {
  return {.compliance = std::move(compliance), .misfit = std::move(gap), .rubbing = {}, .friction = {}};
}

// A block on an incline of `angle` whose fall line points to (0.6, 0.8) in the plane of contact:
// a spring k each way carries what contact does not.
ContactAnswer incline(double angle, double friction, double weight, double spring, double own_compliance) {
  ContactProblem problem;
  problem.compliance = (1.0 / spring + own_compliance) * MatrixXd::Identity(3, 3);
  problem.misfit.resize(3);
  problem.misfit << -weight * std::cos(angle) / spring, 0.6 * weight * std::sin(angle) / spring,
      0.8 * weight * std::sin(angle) / spring;
  problem.rubbing = {0};
  problem.friction = VectorXd::Constant(1, friction);
  return solver::solve_contact(problem);
}

// Four pairs on which the primal-dual active set comes back to a set it has tried: found by a search among integer
// matrices. The answer is that of the first and last pair alone, 2 x 2 by Cramer's rule.
ContactProblem cycling_problem() {
  MatrixXd compliance(4, 4);
  compliance << 10, 9, -9, -3, 9, 19, -18, -12, -9, -18, 19, 12, -3, -12, 12, 11;
  return frictionless(compliance, Eigen::Vector4d(-1, 3, -1, -3));
}

}  // namespace

TEST_CASE("a pair that penetrates is pushed apart by its gap over its compliance", "[solver][contact]") {
  const auto pushed =
      solver::solve_contact(frictionless(MatrixXd::Constant(1, 1, 0.02), VectorXd::Constant(1, -0.3)));
  CHECK(pushed.pressure(0) == Approx(15.0).epsilon(1e-14));
  CHECK(pushed.closed == std::vector<char>{1});
  CHECK(pushed.complementarity < 1e-14);

  const auto apart =
      solver::solve_contact(frictionless(MatrixXd::Constant(1, 1, 0.02), VectorXd::Constant(1, 0.3)));
  CHECK(apart.pressure(0) == 0.0);
  CHECK(apart.closed == std::vector<char>{0});

  const auto touching = solver::solve_contact(frictionless(MatrixXd::Constant(1, 1, 0.02), VectorXd::Zero(1)));
  CHECK(touching.pressure(0) == 0.0);
  CHECK(touching.complementarity == 0.0);
}

TEST_CASE("of two pairs one may open because the other pushes", "[solver][contact]") {
  MatrixXd compliance(2, 2);
  compliance << 2.0, 1.0, 1.0, 3.0;
  // Alone the first needs 1/2, which lifts the second by 1/2 from -0.2.
  const auto lifted = solver::solve_contact(frictionless(compliance, Eigen::Vector2d(-1.0, -0.2)));
  CHECK(lifted.pressure(0) == Approx(0.5).epsilon(1e-14));
  CHECK(lifted.pressure(1) == 0.0);
  CHECK(lifted.closed == std::vector<char>{1, 0});

  const auto both = solver::solve_contact(frictionless(compliance, Eigen::Vector2d(-4.0, -7.0)));
  CHECK(both.pressure(0) == Approx(1.0).epsilon(1e-14));
  CHECK(both.pressure(1) == Approx(2.0).epsilon(1e-14));
}

TEST_CASE("tension of round-off is shed", "[solver][contact]") {
  MatrixXd compliance(2, 2);
  compliance << 2.0, 1.0, 1.0, 3.0;
  // Both taken closed, the second's force is -(2 q2 - q1) / 5 = -4e-14.
  const auto answer = solver::solve_contact(frictionless(compliance, Eigen::Vector2d(-2.0, -1.0 + 1e-13)), {1, 1});
  CHECK(answer.pressure(1) == 0.0);
  CHECK(answer.complementarity < 1e-12);
}

TEST_CASE("without pairs, or with all of them apart, there are no forces", "[solver][contact]") {
  const auto none = solver::solve_contact(frictionless(MatrixXd(0, 0), VectorXd(0)));
  CHECK(none.pressure.size() == 0);
  CHECK(none.complementarity == 0.0);

  Random random(3);
  auto problem = random_problem(random, Kind::full, 17, true);
  problem.misfit.head(17) = problem.misfit.head(17).cwiseAbs();
  const auto apart = solver::solve_contact(problem);
  CHECK(apart.pressure.isZero(0.0));
  CHECK(apart.traction.isZero(0.0));
  CHECK(std::count(apart.slips.begin(), apart.slips.end(), 1) == 0);
}

TEST_CASE("near-duplicates of a pair share its force evenly", "[solver][contact]") {
  constexpr double shared = 0.031;
  constexpr double own = 3.1e-8;
  MatrixXd compliance = MatrixXd::Constant(23, 23, shared);
  compliance.diagonal().array() += own;
  const auto answer = solver::solve_contact(frictionless(compliance, VectorXd::Constant(23, -0.47)));
  CHECK(answer.complementarity < 1e-12);
  for (Index pair = 0; pair < 23; ++pair)
    CHECK(answer.pressure(pair) == Approx(0.47 / (23.0 * shared + own)).epsilon(1e-8));
}

TEST_CASE("where the active set cycles, principal pivoting ends at the answer", "[solver][contact]") {
  const auto problem = cycling_problem();
  const Eigen::Vector4d expected(20.0 / 101.0, 0.0, 0.0, 33.0 / 101.0);

  const VectorXd scales = problem.compliance.diagonal().cwiseSqrt();
  const MatrixXd unit =
      scales.cwiseInverse().asDiagonal() * problem.compliance * scales.cwiseInverse().asDiagonal();
  const VectorXd gap = problem.misfit.cwiseQuotient(scales);
  const std::vector<char> start = {1, 0, 1, 1};
  CHECK_FALSE(solver::primal_dual_active_set(unit, gap, start).solved);
  for (const int patience : {0, 1, 10}) {
    const auto pivoted = solver::block_principal_pivoting(unit, gap, start, patience);
    CHECK(pivoted.solved);
    CHECK((pivoted.pressure.cwiseQuotient(scales) - expected).norm() < 1e-13);
  }

  const auto answer = solver::solve_contact(problem);
  CHECK((answer.pressure - expected).norm() < 1e-13);
  CHECK(answer.complementarity < 1e-13);
}

TEST_CASE("units of force and length may differ from pair to pair", "[solver][contact]") {
  Random random(5);
  auto problem = random_problem(random, Kind::full, 31, false);
  const auto plain = solver::solve_contact(problem);
  const VectorXd units = VectorXd::NullaryExpr(31, [&] { return std::pow(10.0, random.between(-4.0, 4.0)); });
  problem.compliance = units.asDiagonal() * problem.compliance * units.asDiagonal();
  problem.misfit = units.cwiseProduct(problem.misfit);
  const auto scaled = solver::solve_contact(problem);
  CHECK(scaled.closed == plain.closed);
  CHECK(scaled.complementarity < 1e-12);
  for (Index pair = 0; pair < 31; ++pair)
    CHECK(scaled.pressure(pair) * units(pair) ==
          Approx(plain.pressure(pair)).epsilon(1e-9).margin(1e-12 * plain.pressure.maxCoeff()));
}

TEST_CASE("a block on an incline holds below the angle of friction and slides above it", "[solver][contact]") {
  constexpr double weight = 37.0;
  constexpr double spring = 210.0;
  constexpr double friction = 0.43;  // angle of friction 23.3 degrees
  const Vector2d fall(0.6, 0.8);

  const auto holds = incline(0.40, friction, weight, spring, 0.0);
  CHECK(holds.pressure(0) == Approx(weight * std::cos(0.40)).epsilon(1e-12));
  CHECK((holds.traction + weight * std::sin(0.40) * fall).norm() < 1e-12 * weight);
  CHECK(holds.slips == std::vector<char>{0});

  const double share = 1.0 / (1.0 + spring * 1.3e-3);  // of the load that the sprung contact takes
  const auto slides = incline(0.41, friction, weight, spring, 1.3e-3);
  CHECK(slides.pressure(0) == Approx(share * weight * std::cos(0.41)).epsilon(1e-12));
  CHECK((slides.traction + friction * slides.pressure(0) * fall).norm() < 1e-12 * weight);
  CHECK(slides.slips == std::vector<char>{1});
  CHECK(slides.friction_residual < 1e-12);
}

TEST_CASE("without friction a pair slides freely, and slips", "[solver][contact]") {
  const auto answer = incline(0.2, 0.0, 37.0, 210.0, 0.0);
  CHECK(answer.traction.isZero(0.0));
  CHECK(answer.slips == std::vector<char>{1});
  CHECK(answer.friction_residual == 0.0);
}

TEST_CASE("a pair with infinite friction moves as if glued while it is closed", "[solver][contact]") {
  Random random(8);
  auto problem = random_problem(random, Kind::smooth, 13, true);
  problem.friction.setConstant(infinite);
  // Pressures at will, all above zero, and tractions of both signs.
  VectorXd wanted = random.normal(problem.misfit.size(), 1);
  wanted.head(13) = wanted.head(13).cwiseAbs().array() + 0.1;
  wanted = wanted.cwiseQuotient(problem.compliance.diagonal().cwiseSqrt());
  problem.misfit = -problem.compliance * wanted;
  const auto answer = solver::solve_contact(problem);
  CHECK((answer.pressure - wanted.head(13)).norm() < 1e-9 * wanted.norm());
  CHECK((answer.traction - wanted.tail(wanted.size() - 13)).norm() < 1e-9 * wanted.norm());
  CHECK(std::count(answer.closed.begin(), answer.closed.end(), 1) == 13);
  CHECK(std::count(answer.slips.begin(), answer.slips.end(), 1) == 0);
  CHECK(answer.friction_residual < 1e-11);
}

TEST_CASE("a glued pair without an answer holds a hundredfold of its pressure", "[solver][contact]") {
  // Stuck it would be in tension, p = (0.1 - 0.9) / 0.19; let go it would penetrate by 0.1.
  ContactProblem problem;
  problem.compliance = MatrixXd::Identity(3, 3);
  problem.compliance(0, 1) = problem.compliance(1, 0) = 0.9;
  problem.misfit = Eigen::Vector3d(-0.1, -1.0, 0.0);
  problem.rubbing = {0};
  problem.friction = VectorXd::Constant(1, infinite);
  const auto answer = solver::solve_contact(problem);
  CHECK(answer.pressure(0) == Approx(0.1 / 91.0).epsilon(1e-9));
  CHECK(answer.traction(0) == Approx(10.0 / 91.0).epsilon(1e-9));
  CHECK(answer.complementarity < 1e-12);
  CHECK(answer.friction_residual > 0.5);
}

TEST_CASE("contact problems that make no sense are refused", "[solver][contact]") {
  Random random(12);
  const auto good = random_problem(random, Kind::full, 6, true);
  REQUIRE(good.rubbing.size() >= 2);

  auto bad = good;
  bad.compliance.conservativeResize(bad.compliance.rows() - 1, bad.compliance.cols());
  CHECK_THROWS_AS(solver::solve_contact(bad), std::invalid_argument);
  bad = good;
  bad.misfit(2) = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(solver::solve_contact(bad), std::invalid_argument);
  bad = good;
  bad.friction(1) = -0.1;
  CHECK_THROWS_AS(solver::solve_contact(bad), std::invalid_argument);
  bad = good;
  bad.rubbing[1] = bad.rubbing[0];
  CHECK_THROWS_AS(solver::solve_contact(bad), std::invalid_argument);
  bad = good;
  bad.rubbing[1] = 6;
  CHECK_THROWS_AS(solver::solve_contact(bad), std::invalid_argument);
  CHECK_THROWS_AS(solver::solve_contact(good, {1, 0}), std::invalid_argument);

  MatrixXd indefinite(2, 2);
  indefinite << 1.0, 2.0, 2.0, 1.0;
  CHECK_THROWS_AS(solver::solve_contact(frictionless(indefinite, Eigen::Vector2d(-1.0, -1.0))),
                  solver::NotElasticError);
}

}  // namespace gapstrain
