#include "solver/bodies/contact_with_flow.h"

#include <algorithm>
#include <utility>

namespace gapstrain::solver {

namespace {

constexpr double acceptable = 1e-9;  // violation of the laws of contact and friction where no round leads nearer

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

// Newton's method; the best of its states, with the answer to contact that led there.
struct Iterated {
  YieldingContact::State state;
  ContactAnswer contact;
  int rounds = 0;
};

Iterated iterate(YieldingContact& contact, const ContactProblem& problem, std::vector<char> closed,
                 YieldingContact::State state) {
  constexpr int most_rounds = 60, brief = 60, patient = 400, begins_afresh = 4, most_in_vain = 6;
  constexpr double accurate = 1e-10;
  const bool rubs = !problem.rubbing.empty(), glued = problem.friction.array().isInf().any();
  Iterated best;
  int in_vain = 0;  // rounds since the best state got nearer by half
  while (best.rounds < most_rounds) {
    // Contact with one tangent of the flow need not be solved at any price. Where friction leads no nearer, the
    // whole way is gone all the same: a section that begins to flow or ceases turns the next step. Then contact is
    // begun afresh, with nothing near.
    const bool whole_way = rubs && in_vain > 0, afresh = rubs && in_vain == begins_afresh;
    const ContactAnswer found =
        solve_contact(contact.linear_at(state), closed, afresh ? Eigen::VectorXd() : state.force,
                      !whole_way ? brief : (afresh ? patient_rounds : patient));
    Eigen::VectorXd force(problem.misfit.size());
    force << found.pressure, found.traction;
    auto next = whole_way ? contact.at(force, state.flow) : contact.towards(state, force);
    const bool is_first = best.rounds++ == 0;
    const bool gains = is_first || next.violation < 0.5 * best.state.violation;
    if (is_first || next.violation < best.state.violation) {
      best.state = next;
      best.contact = found;
    }
    if (best.state.violation <= (in_vain == 0 ? accurate : acceptable)) break;
    // Pairs that stick leave no answer, with this flow or that.
    if (glued && found.friction_residual > acceptable) break;
    in_vain = gains ? 0 : in_vain + 1;
    if (in_vain > (rubs ? most_in_vain : 3 * most_in_vain)) break;
    if (!rubs || whole_way || next.violation < state.violation) {
      closed = found.closed;
      state = std::move(next);
    }
  }
  return best;
}

// The normal law under these tractions, whatever friction left undone; a pair that this opens loses its traction.
void settle(const ContactProblem& problem, const FlowBesideContact& beside, YieldingContactAnswer& answer) {
  const Eigen::Index pairs = answer.contact.pressure.size();
  while (true) {
    const Eigen::VectorXd& traction = answer.contact.traction;
    ContactProblem normal{.compliance = problem.compliance.topLeftCorner(pairs, pairs),
                          .misfit = problem.misfit.head(pairs) +
                                    problem.compliance.topRightCorner(pairs, traction.size()) * traction,
                          .rubbing = {},
                          .friction = {}};
    FlowBesideContact flow{beside.flow, beside.by_force.leftCols(pairs)};
    flow.flow.shares += beside.by_force.rightCols(traction.size()) * traction;
    auto settled =
        solve_yielding_contact(normal, flow, answer.contact.closed, answer.contact.pressure, answer.flow);
    answer.contact.pressure = settled.contact.pressure;
    answer.contact.closed = settled.contact.closed;
    answer.flow = std::move(settled.flow);
    bool same = true;
    for (std::size_t k = 0; k < problem.rubbing.size(); ++k) {
      auto of_pair = answer.contact.traction.segment<2>(static_cast<Eigen::Index>(2 * k));
      if (answer.contact.closed[static_cast<std::size_t>(problem.rubbing[k])] != 0 || of_pair.isZero(0.0))
        continue;
      of_pair.setZero();
      answer.contact.slips[k] = 0;
      same = false;
    }
    if (same) return;
  }
}

}  // namespace

YieldingContactAnswer solve_yielding_contact(const ContactProblem& problem, const FlowBesideContact& beside,
                                             const std::vector<char>& start, const Eigen::VectorXd& near,
                                             const FlowAnswer& flow) {
  YieldingContactAnswer answer;
  if (problem.misfit.size() == 0) {
    answer.contact = solve_contact(problem, start);
    answer.flow = find_flow(beside.flow, flow);
    return answer;
  }
  YieldingContact contact(problem, beside);
  const Eigen::VectorXd first = near.size() > 0 ? near : Eigen::VectorXd::Zero(problem.misfit.size());
  auto best = iterate(contact, problem, start, contact.at(first, flow));
  answer.contact = std::move(best.contact);
  answer.rounds = best.rounds;
  const Eigen::Index pairs = answer.contact.pressure.size();
  answer.contact.pressure = best.state.force.head(pairs);
  answer.contact.traction = best.state.force.tail(best.state.force.size() - pairs);
  for (Eigen::Index pair = 0; pair < pairs; ++pair)
    if (best.state.force(pair) > 0.0) answer.contact.closed[static_cast<std::size_t>(pair)] = 1;
  answer.flow = std::move(best.state.flow);
  if (best.state.violation > acceptable && !problem.rubbing.empty()) settle(problem, beside, answer);

  Eigen::VectorXd force(problem.misfit.size());
  force << answer.contact.pressure, answer.contact.traction;
  const ContactResidual residual = contact_residual(
      problem, force,
      problem.misfit + problem.compliance * force + beside.by_force.transpose() * answer.flow.deformation);
  answer.contact.complementarity = residual.complementarity;
  answer.contact.friction_residual = residual.friction;
  return answer;
}

}  // namespace gapstrain::solver
