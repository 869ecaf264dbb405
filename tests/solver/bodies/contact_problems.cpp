#include "tests/solver/bodies/contact_problems.h"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>

namespace gapstrain::tests {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::Vector2d;
using Eigen::VectorXd;
using solver::ContactAnswer;
using solver::ContactProblem;

VectorXd misfits(const ContactProblem& problem, const ContactAnswer& answer) {
  VectorXd force(problem.misfit.size());
  force << answer.pressure, answer.traction;
  return problem.misfit + problem.compliance * force;
}

}  // namespace

ContactProblem random_problem(Random& random, Kind kind, int pairs, bool rubs, double most_friction) {
  ContactProblem problem;
  for (int pair = 0; rubs && pair < pairs; ++pair)
    if (random.whole(0, 1) == 1) problem.rubbing.push_back(pair);
  const auto rubbing = static_cast<Index>(problem.rubbing.size());
  const Index rows = pairs + 2 * rubbing;
  const Index rank = kind == Kind::nearly_singular ? std::max<Index>(1, rows / 3) : rows;
  if (kind == Kind::smooth) {
    const MatrixXd places = random.normal(rows, 3);
    problem.compliance = MatrixXd::NullaryExpr(rows, rows, [&places](Index i, Index j) {
      return std::exp(-(places.row(i) - places.row(j)).norm()) + (i == j ? 1e-3 : 0.0);
    });
  } else {
    const MatrixXd root = random.normal(rows, rank);
    problem.compliance = root * root.transpose() / static_cast<double>(rank);
    problem.compliance.diagonal().array() += kind == Kind::nearly_singular ? 1e-5 : 1e-3;
  }
  problem.misfit = random.normal(rows, 1);
  problem.friction = VectorXd::NullaryExpr(rubbing, [&] { return random.between(0.0, most_friction); });

  VectorXd scales(rows);
  for (int pair = 0; pair < pairs; ++pair) scales(pair) = std::pow(10.0, random.between(-2.0, 2.0));
  for (Index k = 0; k < rubbing; ++k)
    scales.segment<2>(pairs + 2 * k).setConstant(scales(problem.rubbing[static_cast<std::size_t>(k)]));
  problem.compliance = scales.asDiagonal() * problem.compliance * scales.asDiagonal();
  problem.misfit = scales.cwiseProduct(problem.misfit);
  return problem;
}

double breach(const ContactProblem& problem, const ContactAnswer& answer) {
  const VectorXd misfit = misfits(problem, answer);
  const Index pairs = answer.pressure.size();
  VectorXd force(misfit.size());
  VectorXd slip(misfit.size());
  const VectorXd diagonal = problem.compliance.diagonal();
  for (Index row = 0; row < misfit.size(); ++row) {
    const Index pair_of_rows = row - (row - pairs) % 2;
    const double square =
        row < pairs ? diagonal(row) : (diagonal(pair_of_rows) + diagonal(pair_of_rows + 1)) / 2.0;
    force(row) = (row < pairs ? answer.pressure(row) : answer.traction(row - pairs)) * std::sqrt(square);
    slip(row) = misfit(row) / std::sqrt(square);
  }
  const double largest = std::max({force.cwiseAbs().maxCoeff(), slip.cwiseAbs().maxCoeff(), 1e-300});
  double worst = 0.0;
  for (Index pair = 0; pair < pairs; ++pair)
    worst = std::max({worst, -force(pair), -slip(pair), std::min(force(pair), slip(pair))});
  for (std::size_t k = 0; k < problem.rubbing.size(); ++k) {
    const Index row = pairs + 2 * static_cast<Index>(k);
    const Vector2d traction = force.segment<2>(row);
    const Vector2d slide = slip.segment<2>(row);
    const double pressure = answer.pressure(problem.rubbing[k]);
    const double mu = problem.friction(static_cast<Index>(k));
    const double length = answer.traction.segment<2>(2 * static_cast<Index>(k)).norm();
    const double unit = length > 0.0 ? traction.norm() / length : 0.0;
    const double bound = pressure > 0.0 ? mu * pressure * unit : 0.0;
    const double longer = std::max(traction.norm(), slide.norm());
    const double against =
        longer > 0.0 ? (traction.norm() * slide + slide.norm() * traction).norm() / longer : 0.0;
    worst = std::max({worst, traction.norm() - bound, std::min(bound - traction.norm(), slide.norm()), against});
  }
  return worst / largest;
}

double difference(const ContactAnswer& one, const ContactAnswer& other) {
  const double size = std::max(one.pressure.norm(), one.traction.norm());
  return std::max((one.pressure - other.pressure).norm(), (one.traction - other.traction).norm()) /
         std::max(size, 1e-300);
}

}  // namespace gapstrain::tests
