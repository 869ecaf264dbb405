#include "solver/bodies/contact_with_flow.h"

#include <algorithm>
#include <utility>

namespace gapstrain::solver {

namespace {

class YieldingContact {
 public:
  YieldingContact(const ContactProblem& problem, const FlowBesideContact& beside)
      : problem_(problem), beside_(beside), flow_problem_(beside.flow) {}

  // Forces with what follows from them.
  struct State {
    Eigen::VectorXd force, misfit;
    FlowAnswer flow;
    double violation = 0.0;  // of the contact laws
  };

  State at(Eigen::VectorXd force, const FlowAnswer& near) {
    State state;
    flow_problem_.shares = beside_.flow.shares + beside_.by_force * force;
    state.flow = find_flow(flow_problem_, near);
    state.misfit =
        problem_.misfit + problem_.compliance * force + beside_.by_force.transpose() * state.flow.deformation;
    const ContactResidual residual = contact_residual(problem_, force, state.misfit);
    state.violation = std::max(residual.complementarity, residual.friction);
    state.force = std::move(force);
    return state;
  }

  // The contact problem with sections that go on flowing as they do here.
  ContactProblem linear_at(const State& state) {
    const Eigen::MatrixXd tangent = flow_tangent(flow_problem_, state.flow) * beside_.by_force;
    ContactProblem linear = problem_;
    linear.compliance.noalias() += beside_.by_force.transpose() * tangent;
    linear.compliance = (0.5 * (linear.compliance + linear.compliance.transpose())).eval();
    linear.misfit += beside_.by_force.transpose() * (state.flow.deformation - tangent * state.force);
    return linear;
  }

  // As far towards `force` as brings it nearer; without friction: as far as the convex function falls.
  State towards(const State& from, const Eigen::VectorXd& force) {
    constexpr int tries = 6;
    const Eigen::VectorXd way = force - from.force;
    const double falls = way.dot(from.misfit);
    const bool convex = problem_.rubbing.empty() && falls < 0.0;
    State best;
    double part = 1.0;
    for (int k = 0; k < tries; ++k) {
      State tried = at(from.force + part * way, from.flow);
      const double still = way.dot(tried.misfit);
      if (tried.violation <= (1.0 - 0.1 * part) * from.violation || (convex && still <= 0.0)) return tried;
      if (best.force.size() == 0 || tried.violation < best.violation) best = std::move(tried);
      part *= convex ? std::clamp(falls / (falls - still), 0.1, 0.5) : 0.3;
    }
    return best;
  }

 private:
  const ContactProblem& problem_;
  const FlowBesideContact& beside_;
  FlowProblem flow_problem_;
};

}  // namespace

YieldingContactAnswer solve_yielding_contact(const ContactProblem& problem, const FlowBesideContact& beside,
                                             const std::vector<char>& start, const Eigen::VectorXd& near,
                                             const FlowAnswer& flow) {
  constexpr int most_rounds = 40, brief = 60, patient = 400, most_in_vain = 2;
  constexpr double accurate = 1e-10, good_enough = 1e-8;
  YieldingContactAnswer answer;
  if (problem.misfit.size() == 0) {
    answer.contact = solve_contact(problem, start);
    answer.flow = find_flow(beside.flow, flow);
    return answer;
  }
  YieldingContact contact(problem, beside);
  auto state = contact.at(near.size() > 0 ? near : Eigen::VectorXd::Zero(problem.misfit.size()), flow);
  std::vector<char> closed = start;
  const bool glued = problem.friction.array().isInf().any();
  // Contact with one tangent of the flow need not be solved at any price; where that brings nothing, dearer.
  for (int in_vain = 0; in_vain < most_in_vain && answer.rounds < most_rounds; ++answer.rounds) {
    const int patience = in_vain == 0 ? brief : patient;
    const ContactAnswer found = solve_contact(contact.linear_at(state), closed, state.force, patience);
    Eigen::VectorXd force(problem.misfit.size());
    force << found.pressure, found.traction;
    auto next = contact.towards(state, force);
    const bool nearer = next.violation < state.violation;
    in_vain = next.violation < 0.5 * state.violation ? 0 : in_vain + 1;
    if (nearer || problem.rubbing.empty() || answer.rounds == 0) {
      closed = found.closed;
      answer.contact = found;
      state = std::move(next);
    }
    if (state.violation <= (in_vain == 0 ? accurate : good_enough)) break;
    // Pairs that stick leave no answer, with this flow or that.
    if (glued && found.friction_residual > good_enough) break;
  }
  const auto pairs = answer.contact.pressure.size();
  for (Eigen::Index pair = 0; pair < pairs; ++pair)
    if (state.force(pair) > 0.0) answer.contact.closed[static_cast<std::size_t>(pair)] = 1;
  answer.contact.pressure = state.force.head(pairs);
  answer.contact.traction = state.force.tail(state.force.size() - pairs);
  const ContactResidual residual = contact_residual(problem, state.force, state.misfit);
  answer.contact.complementarity = residual.complementarity;
  answer.contact.friction_residual = residual.friction;
  answer.flow = std::move(state.flow);
  return answer;
}

}  // namespace gapstrain::solver
