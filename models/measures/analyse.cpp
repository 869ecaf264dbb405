#include "models/measures/analyse.h"

#include "models/measures/bent_parts.h"
#include "models/measures/buckling.h"
#include "models/measures/compression.h"
#include "models/measures/face_pressure.h"
#include "models/measures/figures.h"
#include "models/measures/gap_strain.h"
#include "models/measures/limits.h"
#include "models/measures/make_fields.h"
#include "models/measures/order_advice.h"
#include "models/measures/prebend.h"
#include "models/measures/screw_forces.h"
#include "models/measures/second_order_effects.h"
#include "models/measures/solve.h"
#include "models/measures/stiffness.h"
#include "models/measures/trust.h"
#include "models/measures/working_length.h"
#include "models/stress/body_stress.h"
#include "models/stress/bone_strain.h"
#include "models/stress/plate_fatigue.h"
#include "models/stress/plate_stress.h"
#include "solver/host/side_by_side.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace gapstrain::models {

namespace {

// Those of the construct's variants that the bodies are made ready for.
std::vector<ScrewVariant> variants_on(const Assembly& assembly) {
  std::vector<Screw> known;
  for (const auto& screw : assembly.screws) known.push_back(screw.planned.screw);
  auto variants = working_length_variants(assembly.construct);
  for (auto& variant : variants) {
    if (std::all_of(variant.screws.begin(), variant.screws.end(),
                    [&](const Screw& screw) { return has_place(known, screw); }))
      continue;
    variant.unavailable = "its screws are not among those that the mesh is made ready for";
    variant.screws.clear();
  }
  return variants;
}

// The construct with the screws that are in after the last step, in its own order.
Construct as_made(const Assembly& assembly, const StepState& made) {
  Construct result = assembly.construct;
  std::erase_if(result.screws, [&](const Screw& screw) {
    return std::none_of(made.screws.begin(), made.screws.end(), [&](int in) {
      return same_place(assembly.screws[static_cast<std::size_t>(in)].planned.screw, screw);
    });
  });
  return result;
}

CompressionFindings measure_compression(const Assembly& assembly, const Procedure& procedure,
                                        const std::vector<StepState>& states, Extent extent) {
  CompressionFindings findings;
  findings.steps = measure_steps(assembly, procedure, states);
  if (extent != Extent::whole) return findings;
  const bool is_tight = std::any_of(states.begin(), states.end(), [](const StepState& state) {
    return !state.tightened.empty() || !state.holds.empty();
  });
  if (!is_tight) return findings;
  const Force reached = findings.steps.back().face.force;
  findings.order = advise_order(assembly, procedure, reached);
  if (reached <= 0.0 * newton) return findings;
  // Nothing where the law has no answer: a pair that sticks may have to pull just as it opens.
  const auto with = [&](FrictionLaw law) -> std::optional<Force> {
    Procedure other = procedure;
    other.friction = law;
    const auto all = carry_out(assembly, other);
    const bool holds = std::all_of(all.begin(), all.end(), [](const StepState& state) {
      return state.pressed.friction_residual <= friction_law_limit;
    });
    return holds ? std::optional(force_across(assembly, all.back())) : std::nullopt;
  };
  findings.frictionless = with(FrictionLaw::none);
  findings.sticking = with(FrictionLaw::stick);
  const auto slides = [&](int index) {
    return assembly.screws[static_cast<std::size_t>(index)].planned.screw.kind == ScrewKind::compression;
  };
  const auto& tight = states.back().tightened;
  if (std::any_of(tight.begin(), tight.end(), slides) &&
      only(assembly.construct.plates).contour == Contour::follows_bone) {
    auto prebend = find_prebend(assembly, procedure);
    if (!prebend.curve.empty()) findings.prebend = std::move(prebend);
  }
  return findings;
}

std::vector<std::string> warnings_of(const Construct& construct) {
  std::vector<std::string> warnings;
  for (const auto& problem : check(construct))
    if (problem.severity == Severity::warning) warnings.push_back(problem.message);
  return warnings;
}

}  // namespace

SolvedCase solve_case(const Assembly& assembly) {
  const Construct& construct = assembly.construct;
  SolvedCase solved{procedure_of(construct, chosen_screws(assembly, construct.screws)), {}, {}};
  solved.steps = carry_out(assembly, solved.procedure);
  for (const auto& load : assembly.loads) solved.loads.push_back(solve_load(assembly, solved.steps.back(), load));
  return solved;
}

Analysis analyse(const Assembly& assembly, const Progress& progress, Extent extent) {
  if (progress) progress("carrying out the steps");
  return analyse(assembly, solve_case(assembly), progress, extent);
}

Analysis analyse(const Assembly& assembly, const SolvedCase& made_and_loaded, const Progress& progress,
                 Extent extent) {
  const auto stage = [&](const std::string& text) {
    if (progress) progress(text);
  };
  const Construct& construct = assembly.construct;
  const bool is_whole = extent == Extent::whole;
  const auto variants = is_whole ? variants_on(assembly) : std::vector<ScrewVariant>{};
  const auto& [procedure, steps, loaded_states] = made_and_loaded;
  const StepState& made = steps.back();
  const Construct final_construct = as_made(assembly, made);
  const auto chosen = chosen_screws(assembly, final_construct.screws);

  Analysis analysis;
  Findings& findings = analysis.findings;
  findings.construct = construct.name;
  findings.figures = measure_figures(construct);
  findings.remarks = warnings_of(construct);
  findings.compression = measure_compression(assembly, procedure, steps, extent);
  for (std::size_t k = 0; is_whole && k < steps.size(); ++k)
    analysis.fields.steps.push_back(
        make_step_fields(assembly, procedure.steps[k], steps[k], findings.compression.steps[k].text));

  stage("solving and measuring");
  findings.stiffness = measure_stiffness(assembly, made);
  const auto variants_made = make_variants(assembly, variants);
  SolvedLoads solved{loaded_states, {}};
  std::vector<solver::Solution> solutions, demands;
  for (const auto& state : solved.states) {
    solutions.push_back(state.pressed.solution);
    demands.push_back(demanded(state).solution);
  }
  solved.displacements = recover_displacements(assembly, solutions);
  const bool yields = std::any_of(solved.states.begin(), solved.states.end(),
                                  [](const ConstructState& state) { return state.elastic.has_value(); });
  const auto at_rest = recover_displacements(assembly, {made.pressed.solution});
  const std::size_t bodies = assembly.bodies.size();
  // Stress is what the loads ask for: of metals that do not yield under them.
  const auto asked = yields ? recover_displacements(assembly, demands) : solved.displacements;
  std::vector<std::vector<BodyStress>> stress;  // a body, a load
  for (std::size_t b = 0; b < bodies; ++b)
    stress.push_back(read_stress(assembly.bodies[b].body->shell(), asked[b]));
  const BodyStress plate_at_rest =
      read_stress(assembly.bodies[only_plate_body].body->shell(), at_rest[only_plate_body]).front();

  // Loads do not know of each other: they are measured side by side.
  const auto measure = [&](std::size_t l) {
    const AssembledLoad& load = assembly.loads[l];
    const ConstructState& loaded = solved.states[l];
    const solver::Solution& solution = demands[l];
    std::vector<Eigen::VectorXd> displacements;
    std::vector<const BodyStress*> stress_of_load;
    for (std::size_t b = 0; b < bodies; ++b) {
      displacements.emplace_back(solved.displacements[b].col(static_cast<Eigen::Index>(l)));
      stress_of_load.push_back(&stress[b][l]);
    }
    LoadFindings entry;
    entry.load = load.name;
    entry.gap = measure_gap(assembly, made, loaded);
    entry.face = measure_face(assembly, loaded);
    const Force before = findings.compression.steps.back().face.force;
    if (before > 0.0 * newton) entry.force_left = entry.face.force / before;
    for (std::size_t k = 0; k < assembly.face.size(); ++k)
      entry.gapes = entry.gapes || (made.pressed.closed[k] != 0 &&
                                    loaded.pressed.gap(static_cast<Eigen::Index>(k)) > gaping_opening);
    const UndersideFindings underside = measure_underside(assembly, loaded);
    entry.friction_use = underside.friction_use;
    entry.plate_clearance = underside.clearance;
    entry.plate_pressure = underside.pressure;
    entry.plate = measure_plate(assembly, chosen, solution, stress[only_plate_body][l]);
    entry.plate.fatigue = measure_plate_fatigue(assembly, plate_at_rest, stress[only_plate_body][l]);
    entry.screws = measure_screws(assembly, chosen, solution);
    const auto cycles = measure_screw_cycles(assembly, chosen, made.pressed.solution, solution);
    for (std::size_t k = 0; k < cycles.size(); ++k) {
      entry.screws[k].head_cycle = cycles[k].head;
      entry.screws[k].thread_cycle = cycles[k].thread;
    }
    entry.bone = measure_bone(assembly, chosen, stress_of_load);
    if (is_whole)
      entry.working_length_effect = measure_working_length_effect(assembly, made, variants, variants_made, load);
    entry.second_order = findings_of(loaded.second_order);
    entry.bent = bent_parts(assembly, made.screws, loaded.yielded);
    if (extent != Extent::margins) entry.buckling_factor = measure_buckling(assembly, made, load, loaded);
    auto fields = is_whole ? make_fields(assembly, chosen, load.name, displacements, stress_of_load, loaded)
                           : decltype(analysis.fields.loads)::value_type{};
    return std::pair{std::move(entry), std::move(fields)};
  };
  findings.loads.resize(assembly.loads.size());
  analysis.fields.loads.resize(assembly.loads.size());
  solver::side_by_side(assembly.loads.size(),
                       [&](std::size_t l) { std::tie(findings.loads[l], analysis.fields.loads[l]) = measure(l); });
  findings.compression.limits = find_limits(assembly, made, solved.states, findings.loads);
  findings.trust = measure_trust(assembly, steps, solved, findings.loads);
  return analysis;
}

}  // namespace gapstrain::models
