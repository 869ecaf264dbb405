#include "solver/bodies/plastic_flow.h"

#include <Eigen/LU>

#include <algorithm>
#include <cmath>
#include <utility>

namespace gapstrain::solver {

namespace {

using Matrix6d = Eigen::Matrix<double, 6, 6>;
constexpr double accurate = 1e-9;

class Return {
 public:
  explicit Return(const FlowProblem& problem) : problem_(problem) {
    const auto count = static_cast<Eigen::Index>(problem.sections.size());
    answer_.flow = Eigen::VectorXd::Zero(count);
    answer_.deformation = Eigen::VectorXd::Zero(6 * count);
    answer_.shares = problem.shares;
  }
  Return(const FlowProblem& problem, const FlowAnswer& start) : problem_(problem), answer_(start) {}

  FlowAnswer find() {
    constexpr int most_sweeps = 400, sweeps_a_try = 4;
    if (flow_together()) return answer_;
    for (int sweep = 0; sweep < most_sweeps; ++sweep) {
      for (Eigen::Index k = 0; k < answer_.flow.size(); ++k) go_to(k);
      update();
      if (answer_.residual <= accurate) break;
      if (sweep % sweeps_a_try == sweeps_a_try - 1 && flow_together()) break;
    }
    return answer_;
  }

  Eigen::MatrixXd tangent() const {
    const auto flowing = flowing_now();
    const auto count = static_cast<Eigen::Index>(flowing.size());
    Eigen::MatrixXd whole = Eigen::MatrixXd::Zero(answer_.shares.size(), answer_.shares.size());
    if (count == 0) return whole;
    const Eigen::VectorXd at = unknowns_of(flowing);
    Eigen::MatrixXd asked = Eigen::MatrixXd::Zero(7 * count, 6 * count);
    for (Eigen::Index i = 0; i < count; ++i) asked.block<6, 6>(7 * i, 6 * i).setIdentity();
    const Eigen::MatrixXd change = laws_at(flowing, at).change.partialPivLu().solve(asked);
    for (Eigen::Index i = 0; i < count; ++i) {
      const Demand here = demand(at.segment<6>(7 * i));
      const Eigen::MatrixXd deformation =
          at(7 * i + 6) * here.curvature * change.middleRows<6>(7 * i) + here.gradient * change.row(7 * i + 6);
      for (Eigen::Index j = 0; j < count; ++j)
        whole.block<6, 6>(6 * flowing[place(i)], 6 * flowing[place(j)]) = deformation.middleCols<6>(6 * j);
    }
    return 0.5 * (whole + whole.transpose());
  }

 private:
  HardeningCurve::Point strength(Eigen::Index k, double flow) const {
    return problem_.sections[static_cast<std::size_t>(k)]->curve.at(problem_.flow_before(k) + flow);
  }

  // One section, the others as they are.
  void go_to(Eigen::Index k) {
    const auto own = problem_.compliance.block<6, 6>(6 * k, 6 * k);
    const Resultants others =
        problem_.shares.segment<6>(6 * k) - (problem_.compliance.middleRows<6>(6 * k) * answer_.deformation -
                                             own * answer_.deformation.segment<6>(6 * k));
    double flow = 0.0;
    Resultants shares = others;
    if (demand(others).value > strength(k, 0.0).share) {
      flow = answer_.flow(k);
      shares = flow > 0.0 ? Resultants(answer_.shares.segment<6>(6 * k)) : others;
      come_back(k, own, others, shares, flow);
    }
    answer_.flow(k) = flow;
    answer_.shares.segment<6>(6 * k) = shares;
    answer_.deformation.segment<6>(6 * k).setZero();
    if (flow > 0.0) answer_.deformation.segment<6>(6 * k) = flow * demand(shares).gradient;
  }

  // Solves shares + flow own grad = others, demand(shares) = strength(flow). For a given flow the first has one
  // answer, and with that the demand falls while the strength rises: a bracket that Newton's steps narrow.
  void come_back(Eigen::Index k, const Matrix6d& own, const Resultants& others, Resultants& shares,
                 double& flow) const {
    double low = 0.0, high = std::max(flow, 1e-12);
    for (int doubling = 0; doubling < 200; ++doubling) {
      shares = with_flow(own, others, high, shares);
      if (demand(shares).value <= strength(k, high).share) break;
      low = high;
      high *= 4.0;
    }
    flow = high;
    for (int round = 0; round < 200; ++round) {
      shares = with_flow(own, others, flow, shares);
      const Demand asked = demand(shares);
      const auto [share, slope] = strength(k, flow);
      const double over = asked.value - share;
      (over > 0.0 ? low : high) = flow;
      if (std::abs(over) <= 0.01 * accurate || high - low <= 1e-15 * high) return;
      const Matrix6d change = Matrix6d::Identity() + flow * own * asked.curvature;
      const double falls = asked.gradient.dot(change.partialPivLu().solve(own * asked.gradient)) + slope;
      const double next = flow + over / falls;
      flow = next > low && next < high ? next : 0.5 * (low + high);
    }
  }

  // shares + flow own grad(shares) = others: damped Newton.
  static Resultants with_flow(const Matrix6d& own, const Resultants& others, double flow, Resultants shares) {
    const auto misfit = [&](const Resultants& tried) -> Resultants {
      return tried + flow * own * demand(tried).gradient - others;
    };
    Resultants left = misfit(shares);
    for (int round = 0; round < 60 && left.norm() > 1e-13 * (1.0 + others.norm()); ++round) {
      const Matrix6d change = Matrix6d::Identity() + flow * own * demand(shares).curvature;
      const Resultants step = change.partialPivLu().solve(left);
      double part = 1.0;
      for (int halving = 0; halving < 30; ++halving, part *= 0.5) {
        const Resultants tried = misfit(shares - part * step);
        if (!(tried.norm() < (1.0 - 1e-4 * part) * left.norm())) continue;
        left = tried;
        break;
      }
      shares -= part * step;
    }
    return shares;
  }

  void update() {
    answer_.shares = problem_.shares - problem_.compliance * answer_.deformation;
    answer_.residual = 0.0;
    for (Eigen::Index k = 0; k < answer_.flow.size(); ++k) {
      const Demand asked = demand(answer_.shares.segment<6>(6 * k));
      const double over = asked.value - strength(k, answer_.flow(k)).share;
      const double off = answer_.flow(k) > 0.0 ? std::abs(over) : over;
      if (!(off <= answer_.residual)) answer_.residual = off;
    }
  }

  // Laws of the sections that flow, by their shares and flow (seven a section), and their derivatives.
  struct Laws {
    Eigen::VectorXd left;
    Eigen::MatrixXd change;
  };
  Laws laws_at(const std::vector<Eigen::Index>& flowing, const Eigen::VectorXd& at) const {
    const auto count = static_cast<Eigen::Index>(flowing.size());
    Laws laws{Eigen::VectorXd(7 * count), Eigen::MatrixXd::Zero(7 * count, 7 * count)};
    for (Eigen::Index i = 0; i < count; ++i) {
      laws.left.segment<6>(7 * i) = at.segment<6>(7 * i) - problem_.shares.segment<6>(6 * flowing[place(i)]);
      laws.change.block<6, 6>(7 * i, 7 * i).setIdentity();
    }
    for (Eigen::Index i = 0; i < count; ++i) {
      const Eigen::Index k = flowing[place(i)];
      const double flow = at(7 * i + 6);
      const Demand asked = demand(at.segment<6>(7 * i));
      const auto [share, slope] = strength(k, flow);
      laws.left(7 * i + 6) = asked.value - share;
      laws.change.block<1, 6>(7 * i + 6, 7 * i) = asked.gradient.transpose();
      laws.change(7 * i + 6, 7 * i + 6) = -slope;
      for (Eigen::Index j = 0; j < count; ++j) {
        const Matrix6d give = problem_.compliance.block<6, 6>(6 * flowing[place(j)], 6 * k);
        laws.change.block<6, 6>(7 * j, 7 * i) += flow * give * asked.curvature;
        laws.change.block<6, 1>(7 * j, 7 * i + 6) = give * asked.gradient;
        laws.left.segment<6>(7 * j) += flow * give * asked.gradient;
      }
    }
    return laws;
  }
  static std::size_t place(Eigen::Index i) { return static_cast<std::size_t>(i); }

  // Newton's method with line search on all that flow now; keeps its answer if that is one.
  bool flow_together() {
    const auto flowing = flowing_now();
    if (flowing.empty()) return false;
    const auto count = static_cast<Eigen::Index>(flowing.size());
    Eigen::VectorXd at = unknowns_of(flowing);
    Laws laws = laws_at(flowing, at);
    for (int round = 0; round < 40 && laws.left.cwiseAbs().maxCoeff() > 0.1 * accurate; ++round) {
      const Eigen::VectorXd step = laws.change.partialPivLu().solve(laws.left);
      if (!step.allFinite()) return false;
      double part = 1.0;
      for (; part > 1e-4; part *= 0.5) {
        const Eigen::VectorXd tried = at - part * step;
        Laws then = laws_at(flowing, tried);
        if (!(then.left.norm() < (1.0 - 1e-3 * part) * laws.left.norm())) continue;
        at = tried;
        laws = std::move(then);
        break;
      }
      if (part <= 1e-4) return false;
    }
    Return tried = *this;
    for (Eigen::Index i = 0; i < count; ++i) {
      const Eigen::Index k = flowing[place(i)];
      tried.answer_.flow(k) = at(7 * i + 6);
      tried.answer_.deformation.segment<6>(6 * k) = at(7 * i + 6) * demand(at.segment<6>(7 * i)).gradient;
    }
    if (tried.answer_.flow.minCoeff() < 0.0) return false;
    tried.update();
    if (!(tried.answer_.residual <= accurate)) return false;
    answer_ = tried.answer_;
    return true;
  }

  std::vector<Eigen::Index> flowing_now() const {
    std::vector<Eigen::Index> flowing;
    for (Eigen::Index k = 0; k < answer_.flow.size(); ++k)
      if (answer_.flow(k) > 0.0) flowing.push_back(k);
    return flowing;
  }
  // Shares and flow of these, seven a section.
  Eigen::VectorXd unknowns_of(const std::vector<Eigen::Index>& flowing) const {
    Eigen::VectorXd at(7 * static_cast<Eigen::Index>(flowing.size()));
    Eigen::Index row = 0;
    for (const Eigen::Index k : flowing) {
      at.segment<6>(row) = answer_.shares.segment<6>(6 * k);
      at(row + 6) = answer_.flow(k);
      row += 7;
    }
    return at;
  }

  const FlowProblem& problem_;
  FlowAnswer answer_;
};

}  // namespace

FlowAnswer find_flow(const FlowProblem& problem, const FlowAnswer& near) {
  return (near.flow.size() > 0 ? Return(problem, near) : Return(problem)).find();
}

Eigen::MatrixXd flow_tangent(const FlowProblem& problem, const FlowAnswer& answer) {
  return Return(problem, answer).tangent();
}

}  // namespace gapstrain::solver
