#include "models/layouts/construct_solver.h"

#include "models/loaded/apply_load.h"
#include "models/measures/compression.h"
#include "models/measures/gap_strain.h"
#include "models/measures/solve.h"
#include "models/measures/stiffness.h"
#include "solver/bodies/yielding.h"

#include <algorithm>
#include <utility>

namespace gapstrain::models {

namespace {

std::vector<Screw> screws_of(const Assembly& assembly) {
  std::vector<Screw> screws;
  for (const auto& candidate : assembly.screws) screws.push_back(candidate.planned.screw);
  return screws;
}

}  // namespace

ConstructSolver::ConstructSolver(const Assembly& assembly, const PeakStress& peak, StiffnessOf of)
    : assembly_(assembly),
      peak_(peak),
      fracture_(fracture_extent(assembly.construct)),
      margins_(assembly),
      review_(assembly.construct, screws_of(assembly)),
      initial_(first_deformations(assembly, only(assembly.construct.plates).prebend)),
      friction_(friction_coefficients(assembly, assembly.construct.contact.friction)),
      stiffness_of_(of),
      factor_(assembly.system->rigid().cols()) {
  Procedure nothing;
  nothing.prebend = only(assembly.construct.plates).prebend;
  rests_without_screws_ = assembly.construct.steps.empty() && stays_at_rest(assembly, nothing);
}

Outcome ConstructSolver::solve(const std::vector<int>& chosen) {
  const auto screw = [&](int index) -> const CandidateScrew& {
    return assembly_.screws[static_cast<std::size_t>(index)];
  };
  bool may_rest = true;
  // The plain case, without the names that steps need.
  if (rests_without_screws_ && std::none_of(chosen.begin(), chosen.end(),
                                            [&](int index) { return is_tightened(screw(index).planned.screw); })) {
    std::vector<std::vector<int>> links;
    if (only(assembly_.construct.fractures).tissue) links.push_back(assembly_.tissues[0].links);
    for (const int index : chosen) links.push_back(screw(index).links);
    if (auto outcome = solve_at_rest(chosen, links)) return std::move(*outcome);
    may_rest = false;
  }
  Construct construct = assembly_.construct;
  construct.screws.clear();
  for (const int index : chosen) construct.screws.push_back(screw(index).planned.screw);
  const Procedure procedure = procedure_of(construct, chosen);
  if (may_rest && stays_at_rest(assembly_, procedure))
    if (auto outcome = solve_at_rest(chosen, links_at_the_end(assembly_, procedure))) return std::move(*outcome);
  return solve_in_steps(chosen, procedure);
}

// Keeps the groups that are in place already, from the first on.
void ConstructSolver::build_up(const std::vector<std::vector<int>>& links) {
  std::size_t same = 0;
  while (same < groups_.size() && same < links.size() && groups_[same].links == links[same]) ++same;
  groups_.resize(same);
  const Eigen::Index kept = same == 0 ? 0 : groups_.back().rows;
  let_go(kept);
  for (std::size_t k = same; k < links.size(); ++k) {
    hold(links[k]);
    groups_.push_back({links[k], factor_.rows()});
  }
  links_.clear();
  for (const auto& group : groups_) links_.insert(links_.end(), group.links.begin(), group.links.end());
}

void ConstructSolver::hold(const std::vector<int>& links) {
  const solver::System& system = *assembly_.system;
  const auto rows = system.rows_of(links);
  factor_.append(system.flexibility(), system.rigid(), rows_, rows);
  rows_.insert(rows_.end(), rows.begin(), rows.end());
}

void ConstructSolver::let_go(Eigen::Index kept) {
  factor_.shrink(kept);
  rows_.resize(static_cast<std::size_t>(kept));
}

// As measure_stiffness has it, of a construct at rest. All these loads share their supports.
StiffnessFindings ConstructSolver::stiffness_at_rest(const solver::Setting& resting) {
  const solver::System& system = *assembly_.system;
  const auto& loads = assembly_.stiffness_loads;
  const Eigen::Index before = factor_.rows();
  hold(loads.front().supports);
  const solver::Elimination links(factor_);
  if (links.free_motions().cols() > 0)
    throw free_to_move(assembly_, solver::MechanismError(links.free_motions()), "");
  const auto pairs = static_cast<Eigen::Index>(assembly_.pairs.size());  // their normals follow each other
  const Eigen::Index first = pairs > 0 ? system.first_row(assembly_.pairs.front().normal) : 0;
  Flexibilities flexibilities{};  // nothing touching
  std::array<Eigen::VectorXd, 4> approach;
  for (std::size_t k = 0; k < loads.size(); ++k) {
    const auto answer = links.solve(loads[k].alone.deformations(rows_, Eigen::all), loads[k].alone.resultants);
    Eigen::VectorXd forces = Eigen::VectorXd::Zero(system.rows());
    forces(rows_) = answer.forces.col(0);
    flexibilities[k] = work_on(loads[k], forces, answer.amplitudes);
    approach[k] = loads[k].alone.deformations.col(0).segment(first, pairs) +
                  system.rigid().middleRows(first, pairs) * answer.amplitudes;
    for (const Eigen::Index row : rows_)
      approach[k] -= forces(row) * system.flexibility().col(row).segment(first, pairs);
  }
  const StiffnessSizes sizes = stiffness_sizes(assembly_);
  const bool meets = any_meets(sizes, -initial_.segment(first, pairs), approach);
  if (meets) {
    std::array<double, stiffness_trial_count> found{};
    Eigen::VectorXd forces = Eigen::VectorXd::Zero(system.rows()),
                    amplitudes = Eigen::VectorXd::Zero(factor_.motions());  // under the force alone
    solver::Setting setting = resting;
    setting.links.insert(setting.links.end(), loads.front().supports.begin(), loads.front().supports.end());
    for (std::size_t k = 0; const auto& [unit, size, load] : stiffness_trials(assembly_, sizes)) {
      const auto pressed = solver::find_forces(system, assembly_.pairs, setting, load.alone, &factor_);
      const auto& alone = loads[unit].alone;
      found[k] = alone.work(0) + (alone.resultants.col(0).dot(pressed.amplitudes - amplitudes) -
                                  alone.deformations.col(0).dot(pressed.forces - forces)) /
                                     size;
      if (k++ > 0) continue;
      forces = pressed.forces;
      amplitudes = pressed.amplitudes;
    }
    flexibilities = softer_of(found);
  }
  let_go(before);
  return stiffness_of(sizes, flexibilities, meets);
}

// With second-order effects, as apply_load has them.
std::pair<solver::PressedForces, solver::SecondOrder> ConstructSolver::press_at_rest(
    const AssembledLoad& load, const solver::Setting& setting, const CarriedState& rest) {
  const solver::System& system = *assembly_.system;
  solver::PressedForces pressed;
  const auto press = [&](const solver::System::LoadAlone& alone) {
    pressed = solver::find_forces(system, assembly_.pairs, setting, alone, &factor_);
    if (pulls_at_hands(pressed, load))
      throw free_to_move(assembly_, solver::MechanismError(pressed.pull), load.name);
  };
  press(load.alone);
  if (!load.axes) return {std::move(pressed), solver::SecondOrder{}};
  solver::PressedForces straight = pressed;
  const auto solve = [&](const solver::PortLoads& added) {
    solver::System::LoadAlone alone = system.alone(added);
    alone.deformations += load.alone.deformations;
    alone.resultants += load.alone.resultants;
    press(alone);
    return solver::PortState{system.port_forces(pressed.forces, loads_with(load.forces, added)),
                             pressed.amplitudes};
  };
  auto found = solver::find_second_order(*load.axes, second_order_rule(assembly_.construct),
                                         {rest.port_forces, rest.pressed.amplitudes},
                                         {system.port_forces(straight.forces, load.forces), straight.amplitudes},
                                         work_on(load, straight.forces, straight.amplitudes), solve);
  return {found.is_in() ? std::move(pressed) : std::move(straight), std::move(found)};
}

std::optional<Outcome> ConstructSolver::solve_at_rest(const std::vector<int>& chosen,
                                                      const std::vector<std::vector<int>>& links) {
  const solver::System& system = *assembly_.system;
  const auto pairs = static_cast<Eigen::Index>(assembly_.pairs.size());
  build_up(links);

  solver::Setting setting;
  setting.links = links_;
  setting.initial = initial_;
  setting.friction = friction_;
  setting.hands.at = Eigen::VectorXd::Zero(factor_.motions());
  const auto stiffness =
      stiffness_of_ == StiffnessOf::construct ? stiffness_at_rest(setting) : StiffnessFindings{};
  MadeConstruct made;
  CarriedState& rest = made.state;
  rest.pressed.forces = Eigen::VectorXd::Zero(system.rows());
  rest.pressed.amplitudes = setting.hands.at;
  rest.pressed.closed.assign(static_cast<std::size_t>(pairs), 0);
  rest.edge_motions =
      Eigen::MatrixX3d::Zero(static_cast<Eigen::Index>(assembly_.fragments.front().distal_edge->nodes.size()), 3);
  for (const auto& body : assembly_.bodies)
    rest.port_forces.emplace_back(Eigen::MatrixXd::Zero(body.condensed->compliance.rows(), 1));

  std::vector<CarriedState> loaded;
  for (const auto& load : assembly_.loads) {
    const Eigen::Index before = factor_.rows();
    hold(load.supports);
    setting.links = links_;
    setting.links.insert(setting.links.end(), load.supports.begin(), load.supports.end());
    auto [pressed, second_order] = press_at_rest(load, setting, rest);
    let_go(before);
    if (solver::would_flow(assembly_.yields.sections, pressed.forces)) return std::nullopt;
    if (follows_large_turns(assembly_, largest_body_turn(assembly_, rest.pressed.amplitudes, pressed.amplitudes)))
      return std::nullopt;
    const auto forces = loads_with(load.forces, second_order.forces);
    loaded.push_back(carried_state(assembly_, std::move(pressed), forces));
    loaded.back().second_order = std::move(second_order);
  }
  Outcome outcome = read(chosen, made, loaded, loaded);
  outcome.stiffness = stiffness;
  return outcome;
}

Outcome ConstructSolver::solve_in_steps(const std::vector<int>& chosen, const Procedure& procedure) {
  const auto states = carry_out(assembly_, procedure);
  const StepState& state = states.back();
  MadeConstruct made;
  made.state = carried_state(assembly_, static_cast<const solver::PressedForces&>(state.pressed),
                             assembly_.system->no_loads(1));
  made.held = measure_held(assembly_, state, state);
  for (const auto& step : states) {
    const solver::Solution& solution = step.pressed.solution;
    const auto peaks = peak_.find({solution.port_forces[only_plate_body], solution.amplitudes[only_plate_body]});
    made.plate_peak = std::max(made.plate_peak, peaks.front().von_mises * mpa);
  }
  double made_residual = 0.0;
  for (const auto& step : states) made_residual = std::max(made_residual, step.yield_residual);
  std::vector<CarriedState> loaded, demands;
  for (const auto& load : assembly_.loads) {
    const ConstructState under = solve_load(assembly_, state, load);
    const auto carried = [&](const solver::PressedForces& forces) {
      CarriedState carries = carried_state(assembly_, forces, loads_with(load.forces, under.second_order.forces));
      carries.second_order = under.second_order;
      if (under.large) carries.edge_motions = edge_motions(assembly_, under);
      carries.yield_residual = std::max(made_residual, under.yield_residual);
      return carries;
    };
    loaded.push_back(carried(under.pressed));
    demands.push_back(under.elastic ? carried(*under.elastic) : loaded.back());
  }
  Outcome outcome = read(chosen, made, loaded, demands);
  if (stiffness_of_ == StiffnessOf::construct) outcome.stiffness = measure_stiffness(assembly_, state);
  return outcome;
}

Outcome ConstructSolver::read(const std::vector<int>& chosen, const MadeConstruct& made,
                              const std::vector<CarriedState>& loaded, const std::vector<CarriedState>& demands) {
  std::vector<const Screw*> screws;
  for (const int index : chosen)
    screws.push_back(&assembly_.screws[static_cast<std::size_t>(index)].planned.screw);
  Outcome outcome;
  outcome.figures = measure_figures(assembly_.construct, screws, fracture_);
  outcome.loads = read_outcomes(assembly_, peak_, chosen, made.state, loaded, demands);
  outcome.margins = margins_.measure(chosen, made, demands, outcome.loads);
  outcome.broken_rules = review_.broken(chosen);
  outcome.doubts = doubts_about(assembly_, loaded);
  return outcome;
}

}  // namespace gapstrain::models
