#include "models/measures/trust.h"

#include "models/loaded/apply_load.h"
#include "models/measures/gap_strain.h"
#include "models/measures/mesh_error.h"
#include "models/measures/second_order_effects.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace gapstrain::models {

namespace {

constexpr const char* mesh_error_name = "mesh error of the peak stress, estimated";
constexpr const char* buckling_name = "load factor to buckling";

constexpr double tiny = 1e-300;  // keeps a zero load from dividing by zero

// Preloads and contact forces count as loads do: an unloaded construct may be full of forces.
double largest_port_force(const solver::Solution& solution) {
  double largest = tiny;
  for (const auto& forces : solution.port_forces) largest = std::max(largest, forces.cwiseAbs().maxCoeff());
  return largest;
}

// The larger of both, or what is no number: std::max drops that, and a broken calculation would pass.
double worse(double one, double other) { return std::isnan(one) || one > other ? one : other; }

double largest_rotation(const std::vector<Eigen::MatrixXd>& displacements, Eigen::Index load) {
  double largest = 0.0;
  for (const auto& body : displacements)
    for (Eigen::Index node = 0; node < body.rows() / 6; ++node)
      largest = worse(largest, body.col(load).segment<3>(6 * node + 3).norm());
  return largest;
}

// By how much more than what drives it a fragment moves along the bone in a step: slides of the screws that are
// tightened in it, the gap where a lag screw or a clamp closes it, and the plate's prebend, which tightening
// flattens.
double undriven_travel(const Assembly& assembly, const std::vector<StepState>& steps) {
  const double prebend = std::abs(only(assembly.construct.plates).prebend.value());
  double worst = 0.0, before = 0.0, opening = only(assembly.construct.fractures).gap.value();
  std::size_t tight = 0, holds = 0;
  for (const auto& step : steps) {
    const double place = edge_motions(assembly, step).col(0).mean();
    double driven = prebend;
    for (std::size_t k = std::min(tight, step.tightened.size()); k < step.tightened.size(); ++k) {
      const CandidateScrew& screw = assembly.screws[static_cast<std::size_t>(step.tightened[k])];
      driven += screw.planned.screw.kind == ScrewKind::lag ? opening : std::abs(screw.planned.placement.slide);
    }
    // What is taken out lets go of what it held.
    if (step.holds.size() > holds) driven += opening;
    if (step.holds.size() >= holds && step.tightened.size() >= tight)
      worst = worse(worst, std::abs(place - before) - driven);
    opening += std::abs(place - before);
    before = place;
    tight = step.tightened.size();
    holds = step.holds.size();
  }
  return worst;
}

}  // namespace

Check check_at_most(const std::string& name, double value, double limit, const std::string& meaning) {
  return {name, value, limit, std::isfinite(value) && value <= limit, meaning};
}

Check balance_check(double unbalanced) {
  return check_at_most("force balance", unbalanced, balance_limit,
                       "each body is in balance under screws, supports and loads");
}

Check contact_check(double tension_or_penetration) {
  return check_at_most("contact: tension or penetration, relative", tension_or_penetration, contact_limit,
                       "surfaces that touch press, and surfaces that press touch");
}

Check friction_check(double violation) {
  return check_at_most("contact: friction law, relative", violation, friction_law_limit,
                       "surfaces that touch slide only where friction is used up, and against it");
}

Check yield_check(double over_strength) {
  return check_at_most("yield: strength of sections, relative", over_strength, yield_law_limit,
                       "no section of a screw or plate bears more than its metal does");
}

Check small_turn_check(double angle) {
  return check_at_most("error of small turns, estimated", small_turn_error(angle), small_turn_limit,
                       "turns are small enough for motions that are calculated as if they were small");
}

Check large_turn_check(double change) {
  return check_at_most("large turns: change in the last round", change, large_turn_limit,
                       "the construct has come to rest where its parts have turned to");
}

Check axial_load_check(double load_ratio) {
  return check_at_most("axial load over the buckling load", load_ratio, axial_load_limit,
                       "second-order effects of the axial load are as good as they were shown to be");
}

Check second_order_check(double change) {
  return check_at_most("second-order forces: change in the last round", change, second_order_limit,
                       "what the axial load adds as the construct bends has settled");
}

void judge_buckling(Trust& trust, const std::vector<LoadFindings>& loads) {
  Check buckling{buckling_name, std::numeric_limits<double>::infinity(), 1.0, true,
                 "the load is far enough below the one at which the construct gives way sideways"};
  for (const auto& load : loads) {
    if (!load.buckling_factor) continue;
    const double factor = *load.buckling_factor;
    const double least = load.second_order.amplification ? 1.0 / axial_load_limit : first_order_factor;
    if (std::isnan(buckling.value) || factor / least >= buckling.value / buckling.limit) continue;
    buckling.value = factor;
    buckling.limit = least;
    buckling.passed = factor >= least;
  }
  const auto named = [&](const char* name) {
    return std::find_if(trust.checks.begin(), trust.checks.end(),
                        [&](const Check& check) { return check.name == name; });
  };
  if (const auto before = named(buckling_name); before != trust.checks.end()) trust.checks.erase(before);
  if (std::isinf(buckling.value)) return;
  const auto mesh_error = named(mesh_error_name);
  trust.checks.insert(mesh_error == trust.checks.end() ? mesh_error : mesh_error + 1, buckling);
}

bool is_near_buckling(const Trust& trust) {
  constexpr double somewhat = 3.0;
  return std::any_of(trust.checks.begin(), trust.checks.end(), [](const Check& check) {
    return check.name == buckling_name && !(check.value >= somewhat * check.limit);
  });
}

bool Trust::passed() const {
  return std::all_of(checks.begin(), checks.end(), [](const Check& check) { return check.passed; });
}

Trust measure_trust(const Assembly& assembly, const std::vector<StepState>& steps, const SolvedLoads& solved,
                    const std::vector<LoadFindings>& loads) {
  double residual = 0.0, unbalanced = 0.0, energy = 0.0, over_yield = 0.0, contact = 0.0, friction = 0.0,
         yield = 0.0, settling = 0.0;
  const auto look_at = [&](const ConstructState& state) {
    contact = worse(contact, state.pressed.complementarity);
    friction = worse(friction, state.pressed.friction_residual);
    yield = worse(yield, state.yield_residual);
  };
  for (const auto& step : steps) look_at(step);
  double turn = 0.0;  // that is taken to be small
  std::optional<double> axial, turned;
  Trust trust;
  for (std::size_t l = 0; l < loads.size(); ++l) {
    const AssembledLoad& load = assembly.loads[l];
    const solver::Solution& solution = solved.states[l].pressed.solution;
    look_at(solved.states[l]);
    const auto column = static_cast<Eigen::Index>(l);
    for (std::size_t b = 0; b < assembly.bodies.size(); ++b) {
      const auto& body = assembly.bodies[b];
      residual = worse(residual, body.body->residual(*body.ports, solution.port_forces[b],
                                                     solved.displacements[b].col(column))(0));
    }
    unbalanced =
        worse(unbalanced, solver::unbalanced_force(*assembly.system, solution)(0) / largest_port_force(solution));
    const auto balance = solver::energy_balance(*assembly.system, solution,
                                                loads_with(load.forces, solved.states[l].second_order.forces));
    energy = worse(
        energy, std::abs(balance.stored(0) - balance.supplied(0)) / std::max(std::abs(balance.stored(0)), tiny));
    // Where metals yield, motions follow what they bear.
    if (assembly.yields.sections.empty()) over_yield = worse(over_yield, loads[l].plate.share_over_yield);
    settling = worse(settling, loads[l].second_order.residual);
    const auto& large = loads[l].second_order.large;
    turn = worse(turn,
                 large && large->settled ? large->within.value() : largest_rotation(solved.displacements, column));
    if (large) turned = turned ? worse(*turned, large->residual) : large->residual;
    if (const auto& ratio = loads[l].second_order.load_ratio) axial = axial ? worse(*axial, *ratio) : *ratio;
  }
  const MeshError error = estimate_mesh_error(assembly, solved, loads);
  trust.mesh_error_stiffness = error.stiffness;
  trust.mesh_error_peak = error.peak;
  trust.checks = {
      check_at_most("residual", residual, 1e-7, "forces at every node of the mesh balance"),
      balance_check(unbalanced),
      check_at_most("energy balance", energy, 1e-8, "the work of the loads is stored as elastic energy"),
      small_turn_check(turn),
      check_at_most("share of the plate over its yield strength", over_yield, 0.01,
                    "the plate stays elastic, apart from spots; beyond, the figures understate the motion"),
      contact_check(contact),
      friction_check(friction),
      check_at_most("travel of a fragment beyond what a step moves (mm)", undriven_travel(assembly, steps), 0.25,
                    "no step of the operation moves a fragment further than its screws and clamps do"),
      yield_check(yield),
      check_at_most(mesh_error_name, trust.mesh_error_peak, 0.10,
                    "the mesh is fine enough where the plate is hottest")};
  judge_buckling(trust, loads);
  if (turned) trust.checks.push_back(large_turn_check(*turned));
  if (axial) {
    trust.checks.push_back(axial_load_check(*axial));
    trust.checks.push_back(second_order_check(settling));
  }
  return trust;
}

}  // namespace gapstrain::models
