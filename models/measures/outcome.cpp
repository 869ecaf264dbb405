#include "models/measures/outcome.h"

#include "models/loaded/apply_load.h"
#include "models/measures/gap_strain.h"
#include "models/measures/screw_forces.h"
#include "models/measures/second_order_effects.h"
#include "models/measures/stiffness.h"
#include "models/measures/trust.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace gapstrain::models {

namespace {

void read_gap(const Assembly& assembly, const CarriedState& made, const CarriedState& loaded, LoadOutcome& out) {
  const GapFindings gap =
      measure_gap(assembly, made.pressed, loaded.pressed, made.edge_motions, loaded.edge_motions);
  out.axial_strain = gap.axial_strain;
  if (gap.shear_strain) out.shear_strain = gap.shear_strain->max;
  out.closed = gap.windows.closed;
  out.near_motion = gap.near.axial_motion;
  out.far_motion = gap.far.axial_motion;
  out.largest_motion = gap.largest_motion;
}

void read_screws(const Assembly& assembly, const std::vector<int>& chosen, const CarriedState& loaded,
                 LoadOutcome& out) {
  for (const int index : chosen) {
    const CandidateScrew& candidate = assembly.screws[static_cast<std::size_t>(index)];
    const ShaftPeak peak = shaft_peak(assembly, candidate, loaded.pressed.forces);
    out.screw_stress = std::max(out.screw_stress, peak.equivalent * mpa);
    out.screw_pull = std::max(out.screw_pull, peak.axial_at_head * newton);
    const auto& yield = candidate.planned.screw.material.yield_strength;
    if (!yield || !(peak.equivalent > 0.0)) continue;
    const double factor = yield->value() / peak.equivalent;
    out.screw_to_yield = out.screw_to_yield ? std::min(*out.screw_to_yield, factor) : factor;
  }
}

void read_contact(const Assembly& assembly, const CarriedState& loaded, LoadOutcome& out) {
  const auto faces = static_cast<Eigen::Index>(assembly.face.size());
  const auto undersides = static_cast<Eigen::Index>(assembly.underside.size());
  out.across = loaded.pressed.pressure.head(faces).sum() * newton;
  out.plate_pressure = loaded.pressed.pressure.tail(undersides).sum() * newton;
  if (undersides > 0) out.plate_clearance = loaded.pressed.gap.tail(undersides).minCoeff() * mm;
}

PeakStress::PlateForces on_plate(const Assembly& assembly, const std::vector<CarriedState>& states) {
  const auto count = static_cast<Eigen::Index>(states.size());
  PeakStress::PlateForces forces;
  forces.port_forces.resize(assembly.bodies[only_plate_body].condensed->compliance.rows(), count);
  forces.amplitudes.resize(6, count);
  for (Eigen::Index k = 0; k < count; ++k) {
    const CarriedState& state = states[static_cast<std::size_t>(k)];
    forces.port_forces.col(k) = state.port_forces[only_plate_body];
    forces.amplitudes.col(k) = state.pressed.amplitudes.segment<6>(6 * only_plate_body);
  }
  return forces;
}

}  // namespace

std::optional<double> LoadOutcome::gap_strain() const {
  if (!axial_strain) return std::nullopt;
  return std::max(std::abs(axial_strain->min), std::abs(axial_strain->max));
}

CarriedState carried_state(const Assembly& assembly, solver::PressedForces pressed,
                           const solver::PortLoads& loads) {
  CarriedState state;
  state.port_forces = assembly.system->port_forces(pressed.forces, loads);
  state.edge_motions = edge_motions(assembly, state.port_forces, pressed.amplitudes);
  state.pressed = std::move(pressed);
  return state;
}

std::vector<LoadOutcome> read_outcomes(const Assembly& assembly, const PeakStress& peak,
                                       const std::vector<int>& chosen, const CarriedState& made,
                                       const std::vector<CarriedState>& loaded,
                                       const std::vector<CarriedState>& demands) {
  const Metal& metal = only(assembly.construct.plates).material;
  const auto peaks = peak.find(on_plate(assembly, demands), on_plate(assembly, {made}), metal);
  const auto& yield = metal.yield_strength;

  std::vector<LoadOutcome> outcomes(loaded.size());
  for (std::size_t k = 0; k < loaded.size(); ++k) {
    LoadOutcome& out = outcomes[k];
    out.peak_stress = peaks[k].von_mises * mpa;
    out.peak_hole = peaks[k].hole;
    out.plate_cycle = peaks[k].cycle;
    if (yield && peaks[k].von_mises > 0.0) out.plate_to_yield = yield->value() / peaks[k].von_mises;
    read_gap(assembly, made, loaded[k], out);
    read_screws(assembly, chosen, demands[k], out);
    read_contact(assembly, loaded[k], out);
    const auto& before = made.pressed;
    const auto& after = loaded[k].pressed;
    out.second_order = findings_of(loaded[k].second_order);
    out.work = work_on(assembly.loads[k], after.forces - before.forces, after.amplitudes - before.amplitudes) +
               work_on_added(assembly, assembly.loads[k], loaded[k].second_order);
  }
  return outcomes;
}

std::vector<Check> doubts_about(const Assembly& assembly, const std::vector<CarriedState>& loaded) {
  double balance = 0.0, contact = 0.0, friction = 0.0, yield = 0.0, turn = 0.0, axial = 0.0, settling = 0.0,
         turned = 0.0;
  double not_finite = 0.0;
  for (const auto& state : loaded) {
    double largest = 1e-300;
    for (const auto& forces : state.port_forces) {
      if (!forces.allFinite())
        not_finite += static_cast<double>(forces.size() - forces.array().isFinite().count());
      largest = std::max(largest, forces.cwiseAbs().maxCoeff());
    }
    for (std::size_t b = 0; b < assembly.bodies.size(); ++b) {
      const Eigen::VectorXd left = assembly.bodies[b].condensed->rigid.transpose() * state.port_forces[b];
      balance = std::max(balance, left.cwiseAbs().maxCoeff() / largest);
    }
    const auto& turns = state.second_order.turns;
    turn = std::max(turn, turns && turns->settled
                              ? turns->within
                              : largest_body_turn(assembly, Eigen::VectorXd::Zero(state.pressed.amplitudes.size()),
                                                  state.pressed.amplitudes));
    if (turns) turned = std::max(turned, turns->residual);
    contact = std::max(contact, state.pressed.complementarity);
    friction = std::max(friction, state.pressed.friction_residual);
    if (!(state.yield_residual <= yield)) yield = state.yield_residual;
    axial = std::max(axial, state.second_order.load_ratio.value_or(0.0));
    settling = std::max(settling, state.second_order.residual);
  }
  if (not_finite > 0.0)
    return {check_at_most("forces that are no finite number", not_finite, 0.0, "every force is a number")};
  std::vector<Check> checks = {balance_check(balance),       contact_check(contact),  friction_check(friction),
                               yield_check(yield),           small_turn_check(turn),  axial_load_check(axial),
                               second_order_check(settling), large_turn_check(turned)};
  std::erase_if(checks, [](const Check& check) { return check.passed; });
  return checks;
}

}  // namespace gapstrain::models
