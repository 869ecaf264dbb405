#include "models/measures/compression.h"

#include "models/measures/bent_parts.h"
#include "models/measures/face_pressure.h"
#include "models/measures/gap_strain.h"
#include "models/measures/solve.h"
#include "models/parts/tightening.h"
#include "models/stress/plate_stress.h"

namespace gapstrain::models {

namespace {

Length fragment_travel(const Assembly& assembly, const ConstructState& state) {
  return edge_motions(assembly, state).col(0).mean() * mm;
}

HeldForce held_by(const CandidateScrew& screw, double force) {
  HeldForce held{screw.planned.screw.label, force * newton, {}, {}, screw.planned.screw.id};
  held.of_pull_out = held.axial / pull_out_strength(screw.planned.screw.size, engaged_thread(screw));
  if (const auto yield = core_yield(screw.planned.screw)) held.of_yield = held.axial / *yield;
  return held;
}

}  // namespace

std::vector<HeldForce> measure_held(const Assembly& assembly, const StepState& step, const ConstructState& state) {
  std::vector<HeldForce> held;
  for (const int index : step.tightened) {
    const CandidateScrew& screw = assembly.screws[static_cast<std::size_t>(index)];
    held.push_back(held_by(screw, link_force(state.pressed.solution, screw.head)(2)));
  }
  for (const int index : step.holds) {
    const Hold& hold = assembly.holds[static_cast<std::size_t>(index)];
    if (!hold.wire)
      held.push_back({hold.hold.label, link_force(state.pressed.solution, hold.links[0])(0) * newton, {}, {}});
  }
  return held;
}

Force force_across(const Assembly& assembly, const ConstructState& state) {
  return state.pressed.pressure.head(static_cast<Eigen::Index>(assembly.face.size())).sum() * newton;
}

std::vector<StepFindings> measure_steps(const Assembly& assembly, const Procedure& procedure,
                                        const std::vector<StepState>& states, bool with_stress) {
  std::vector<StepFindings> all;
  Length before;
  for (std::size_t k = 0; k < states.size(); ++k) {
    const StepState& state = states[k];
    StepFindings findings;
    findings.text = describe(procedure.steps[k], procedure, assembly.construct);
    findings.face = measure_face(assembly, state);
    findings.travel_in_all = fragment_travel(assembly, state);
    findings.travel = findings.travel_in_all - before;
    before = findings.travel_in_all;
    findings.held = measure_held(assembly, state, state);
    if (with_stress) findings.plate_peak = sampled_peak(assembly, state.pressed.solution) * mpa;
    findings.friction_use = measure_underside(assembly, state).friction_use;
    findings.by_hand = state.pressed.free_motions.cols() > 0;
    findings.bent = bent_parts(assembly, state.screws, state.yielded);
    all.push_back(std::move(findings));
  }
  return all;
}

Force final_force(const Assembly& assembly, const Procedure& procedure) {
  return force_across(assembly, carry_out(assembly, procedure).back());
}

}  // namespace gapstrain::models
