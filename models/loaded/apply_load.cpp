#include "models/loaded/apply_load.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <utility>

namespace gapstrain::models {

namespace {

// Force or moment on any port, N or N mm.
double largest_force(const AssembledLoad& load) {
  double largest = 0.0;
  for (const auto& forces : load.forces) largest = std::max(largest, forces.cwiseAbs().maxCoeff());
  return largest;
}

solver::PortState port_state(const solver::Solution& solution) {
  solver::PortState state{solution.port_forces,
                          Eigen::VectorXd(6 * static_cast<Eigen::Index>(solution.amplitudes.size()))};
  for (std::size_t b = 0; b < solution.amplitudes.size(); ++b)
    state.amplitudes.segment<6>(static_cast<Eigen::Index>(6 * b)) = solution.amplitudes[b].col(0);
  return state;
}

// `under`: the construct under forces on ports.
void add_second_order(const Assembly& assembly, const ConstructState& made, const AssembledLoad& load,
                      const std::function<ConstructState(const solver::PortLoads&)>& under,
                      ConstructState& answer) {
  const solver::Solution &before = made.pressed.solution, &after = answer.pressed.solution;
  double work = 0.0;
  for (std::size_t b = 0; b < load.forces.size(); ++b)
    work += load.forces[b].cwiseProduct(after.motions[b] - before.motions[b]).sum();
  ConstructState bent;
  const auto solve = [&](const solver::PortLoads& added) {
    bent = under(loads_with(load.forces, added));
    return port_state(bent.pressed.solution);
  };
  auto found = solver::find_second_order(*load.axes, second_order_rule(assembly.construct), port_state(before),
                                         port_state(after), work, solve);
  if (found.is_in()) {
    bent.straight = std::move(answer.pressed);
    answer = std::move(bent);
  }
  answer.second_order = std::move(found);
}

solver::MovedState moved_state(const solver::PressedState& pressed) {
  solver::MovedState state{pressed.forces, {}};
  for (const auto& motions : pressed.solution.motions) state.motions.emplace_back(motions.col(0));
  return state;
}

// Instead of an answer whose turns are taken to be small. `under`: the construct under forces on ports, with more
// initial deformation of links.
void follow_turns(const Assembly& assembly, const ConstructState& made, const AssembledLoad& load, double turn,
                  const std::function<ConstructState(const solver::PortLoads&, const Eigen::VectorXd&)>& under,
                  ConstructState& answer) {
  constexpr double turn_a_step = 0.15;  // rad, of the answer with small turns, which turns further
  constexpr double most_steps = 20.0;
  const solver::TurningSystem turning(*assembly.system, assembly.turning);
  std::vector<solver::TurningArm> arms;
  for (const auto& [ring, arm] : load.arms) arms.push_back({ring.body, ring.column, arm});
  ConstructState bent;
  const auto solve = [&](double share, const solver::PortLoads& more, const Eigen::VectorXd& initial) {
    solver::PortLoads forces = load.forces;
    for (auto& of_body : forces) of_body *= share;
    bent = under(loads_with(forces, more), initial);
    return moved_state(bent.pressed);
  };
  const int steps = static_cast<int>(std::clamp(std::ceil(turn / turn_a_step), 1.0, most_steps));
  auto found = solver::find_large_motion(turning, moved_state(made.pressed), load.forces, arms, steps, solve);
  answer.second_order.turns = {found.turn, found.turn_within, found.residual, found.settled};
  if (!found.settled) return;
  bent.second_order = std::move(answer.second_order);
  bent.second_order.forces = found.forces;
  bent.straight = answer.straight ? std::move(answer.straight) : std::move(answer.pressed);
  bent.large = std::move(found);
  answer = std::move(bent);
}

}  // namespace

double largest_body_turn(const Assembly& assembly, const Eigen::VectorXd& made, const Eigen::VectorXd& loaded) {
  double largest = 0.0;
  for (std::size_t b = 0; b < assembly.bodies.size(); ++b) {
    const auto first = static_cast<Eigen::Index>(6 * b);
    const Eigen::VectorXd moved = loaded.segment<6>(first) - made.segment<6>(first);
    largest = std::max(largest, (assembly.bodies[b].condensed->turn * moved).norm());
  }
  return largest;
}

bool follows_large_turns(const Assembly& assembly, double turn) {
  const bool always = assembly.construct.second_order == SecondOrderEffects::large;
  return !assembly.turning.empty() && (always || turn > large_turn);
}

solver::PortLoads loads_with(const solver::PortLoads& load, const solver::PortLoads& added) {
  solver::PortLoads all = load;
  for (std::size_t b = 0; b < added.size(); ++b) all[b] += added[b];
  return all;
}

solver::SecondOrderRule second_order_rule(const Construct& construct) {
  return {.always = construct.second_order == SecondOrderEffects::always};
}

bool pulls_at_hands(const solver::PressedForces& pressed, const AssembledLoad& load) {
  return pressed.pull.norm() > 1e-6 * largest_force(load);
}

ConstructState apply_load(const Assembly& assembly, const ConstructState& state, const AssembledLoad& load,
                          Metals metals) {
  const solver::System& system = *assembly.system;
  ConstructState loaded;
  loaded.setting = state.setting;
  loaded.setting.initial = state.pressed.initial;
  loaded.setting.closed = state.pressed.closed;
  loaded.setting.hands.soft.reset();
  loaded.met = state.met;
  loaded.yielded = state.yielded;
  std::vector<int>& links = loaded.setting.links;
  for (const int support : assembly.on_the_table.supports) std::erase(links, support);
  // Supports take the construct as it lies: they would turn it otherwise.
  const Eigen::VectorXd deformations = system.deformations(state.pressed.solution);
  for (const Eigen::Index row : system.rows_of(load.supports)) loaded.setting.initial(row) = deformations(row);
  links.insert(links.end(), load.supports.begin(), load.supports.end());
  const auto under_with = [&](const solver::PortLoads& forces, const Eigen::VectorXd& initial) {
    ConstructState tried = loaded;
    if (initial.size() > 0) tried.setting.initial += initial;
    if (metals == Metals::elastic)
      tried.pressed = solver::press(system, assembly.pairs, tried.setting, forces);
    else
      press_on(assembly, forces, tried);
    if (pulls_at_hands(tried.pressed, load)) throw solver::MechanismError(tried.pressed.pull);
    return tried;
  };
  const auto under = [&](const solver::PortLoads& forces) { return under_with(forces, {}); };
  ConstructState answer = under(load.forces);
  if (load.axes) {
    add_second_order(assembly, state, load, under, answer);
    const double turn = largest_body_turn(assembly, state.pressed.amplitudes, answer.pressed.amplitudes);
    if (follows_large_turns(assembly, turn)) follow_turns(assembly, state, load, turn, under_with, answer);
  }
  note_meeting(assembly, deformations_with_bends(assembly, answer), answer);
  return answer;
}

}  // namespace gapstrain::models
