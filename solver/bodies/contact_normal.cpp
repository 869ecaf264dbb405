#include "solver/bodies/contact_normal.h"

#include "solver/bodies/not_elastic_error.h"

#include <Eigen/Cholesky>

#include <algorithm>
#include <limits>
#include <set>
#include <utility>

namespace gapstrain::solver {

namespace {

constexpr double round_off = 1e-11;

// The forces that just close the pairs of a set, and the pairs that this leaves at fault: tension or penetration.
struct Trial {
  Eigen::VectorXd pressure;
  std::vector<int> at_fault;
  double worst = 0.0;  // over the largest force or gap
};

Trial try_set(const Eigen::MatrixXd& compliance, const Eigen::VectorXd& gap, const std::vector<char>& closed) {
  std::vector<int> in;
  std::vector<int> out;
  for (std::size_t pair = 0; pair < closed.size(); ++pair)
    (closed[pair] ? in : out).push_back(static_cast<int>(pair));

  Trial trial{.pressure = Eigen::VectorXd::Zero(gap.size()), .at_fault = {}};
  Eigen::VectorXd signed_law(gap.size());  // force of a closed pair, gap of an open one
  if (!in.empty()) {
    const Eigen::LLT<Eigen::MatrixXd> cholesky(compliance(in, in));
    if (cholesky.info() != Eigen::Success)
      throw NotElasticError("the compliance between the contact pairs is not positive definite");
    const Eigen::VectorXd force = cholesky.solve(-gap(in));
    trial.pressure(in) = force;
    signed_law(in) = force;
    if (!out.empty()) signed_law(out) = gap(out) + compliance(out, in) * force;
  } else {
    signed_law = gap;
  }
  const double largest = signed_law.size() > 0 ? signed_law.cwiseAbs().maxCoeff() : 0.0;
  for (Eigen::Index pair = 0; pair < gap.size(); ++pair)
    if (signed_law(pair) < -round_off * largest) trial.at_fault.push_back(static_cast<int>(pair));
  if (largest > 0.0) trial.worst = std::max(0.0, -signed_law.minCoeff() / largest);
  return trial;
}

void change_sides(std::vector<char>& closed, const std::vector<int>& pairs) {
  for (const int pair : pairs) {
    auto& side = closed[static_cast<std::size_t>(pair)];
    side = side ? 0 : 1;
  }
}

}  // namespace

NormalAnswer primal_dual_active_set(const Eigen::MatrixXd& compliance, const Eigen::VectorXd& gap,
                                    std::vector<char> start) {
  constexpr int rounds = 30;
  NormalAnswer answer;
  answer.closed = std::move(start);
  std::set<std::vector<char>> seen;
  while (answer.rounds < rounds && seen.insert(answer.closed).second) {
    ++answer.rounds;
    auto trial = try_set(compliance, gap, answer.closed);
    answer.pressure = std::move(trial.pressure);
    answer.solved = trial.at_fault.empty();
    if (answer.solved) break;
    change_sides(answer.closed, trial.at_fault);
  }
  return answer;
}

NormalAnswer block_principal_pivoting(const Eigen::MatrixXd& compliance, const Eigen::VectorXd& gap,
                                      std::vector<char> start, int patience) {
  // Murty's rule needs far fewer exchanges than it may; where round-off alone keeps it going, the best set is
  // kept.
  const int most_rounds = 1000 + 100 * static_cast<int>(gap.size());
  std::vector<char> closed = std::move(start);
  auto fewest = closed.size() + 1;
  int grace = patience;
  NormalAnswer best;
  double least = std::numeric_limits<double>::infinity();
  for (int round = 1; round <= most_rounds; ++round) {
    auto trial = try_set(compliance, gap, closed);
    const bool solved = trial.at_fault.empty();
    if (solved || trial.worst < least) {
      least = trial.worst;
      best = {.pressure = std::move(trial.pressure), .closed = closed, .rounds = round, .solved = solved};
    }
    best.rounds = round;
    if (solved) break;

    if (trial.at_fault.size() < fewest) {
      fewest = trial.at_fault.size();
      grace = patience;
    } else if (grace > 0) {
      --grace;
    } else {
      trial.at_fault = {trial.at_fault.back()};
    }
    change_sides(closed, trial.at_fault);
  }
  return best;
}

NormalAnswer solve_normal(const Eigen::MatrixXd& compliance, const Eigen::VectorXd& gap,
                          const std::vector<char>& start) {
  auto answer = primal_dual_active_set(compliance, gap, start);
  if (answer.solved) return answer;
  const int rounds = answer.rounds;
  answer = block_principal_pivoting(compliance, gap, answer.closed);
  answer.rounds += rounds;
  return answer;
}

}  // namespace gapstrain::solver
