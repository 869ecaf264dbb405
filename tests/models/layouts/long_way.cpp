#include "tests/models/layouts/long_way.h"

#include "models/assembly/insertion.h"
#include "models/catalogue/analysed_outcome.h"
#include "models/margins/margins.h"
#include "models/measures/compression.h"
#include "models/measures/face_pressure.h"
#include "models/measures/figures.h"
#include "models/measures/gap_strain.h"
#include "models/measures/screw_forces.h"
#include "models/measures/second_order_effects.h"
#include "models/measures/solve.h"
#include "models/measures/stiffness.h"
#include "models/rules/rules.h"
#include "models/stress/body_stress.h"
#include "models/stress/plate_fatigue.h"
#include "models/stress/plate_stress.h"
#include "tests/framework/numbers.h"

#include <fmt/format.h>

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <limits>
#include <optional>

namespace gapstrain::tests {

using namespace models;  // NOLINT: this file is nothing but findings

namespace {

double work_of(const AssembledLoad& load, const ConstructState& made, const ConstructState& loaded) {
  double work = 0.0;
  for (std::size_t b = 0; b < load.forces.size(); ++b)
    work +=
        load.forces[b].cwiseProduct(loaded.pressed.solution.motions[b] - made.pressed.solution.motions[b]).sum();
  return work;
}

}  // namespace

Outcome long_way(const Assembly& assembly, const std::vector<int>& chosen) {
  Construct construct = assembly.construct;
  construct.screws.clear();
  for (const int index : chosen)
    construct.screws.push_back(assembly.screws[static_cast<std::size_t>(index)].planned.screw);
  const Procedure procedure = procedure_of(construct, chosen);
  const auto steps = carry_out(assembly, procedure);
  const StepState& made = steps.back();
  const auto stress_at_rest =
      read_stress(assembly.bodies[only_plate_body].body->shell(),
                  recover_displacements(assembly, {made.pressed.solution})[only_plate_body]);
  Findings findings;
  findings.compression.steps = measure_steps(assembly, procedure, steps);
  findings.figures = measure_figures(construct);
  findings.stiffness = measure_stiffness(assembly, made);
  std::vector<double> work;
  for (const auto& load : assembly.loads) {
    const ConstructState loaded = solve_load(assembly, made, load);
    const auto& solution = demanded(loaded).solution;
    const auto displacements = recover_displacements(assembly, {solution});
    const auto stress =
        read_stress(assembly.bodies[only_plate_body].body->shell(), displacements[only_plate_body]);
    LoadFindings entry;
    entry.gap = measure_gap(assembly, made, loaded);
    entry.face = measure_face(assembly, loaded);
    const UndersideFindings underside = measure_underside(assembly, loaded);
    entry.plate_clearance = underside.clearance;
    entry.second_order = findings_of(loaded.second_order);
    entry.plate_pressure = underside.pressure;
    entry.plate = measure_plate(assembly, chosen, solution, stress.front());
    entry.plate.fatigue = measure_plate_fatigue(assembly, stress_at_rest.front(), stress.front());
    entry.screws = measure_screws(assembly, chosen, solution);
    const auto cycles = measure_screw_cycles(assembly, chosen, made.pressed.solution, solution);
    for (std::size_t k = 0; k < cycles.size(); ++k) {
      entry.screws[k].head_cycle = cycles[k].head;
      entry.screws[k].thread_cycle = cycles[k].thread;
    }
    findings.loads.push_back(std::move(entry));
    work.push_back(work_of(load, made, loaded));
  }
  Outcome outcome = tests::outcome_of(findings, construct);
  for (std::size_t k = 0; k < work.size(); ++k) outcome.loads[k].work = work[k];
  return outcome;
}

Outcome outcome_of(const Findings& findings, const Construct& construct) {
  return models::outcome_of(findings, construct, collect_margins(construct, findings).margins, review(construct));
}

std::vector<ScaledFigure> all_figures(const Outcome& outcome) {
  std::vector<ScaledFigure> all;
  const auto add = [&](const std::string& name, double value, double scale = 0.0) {
    all.push_back({name, value, std::max(std::abs(value), scale)});
  };
  const ConstructFigures& figures = outcome.figures;
  add("working length", figures.working_length.value());
  add("plate span ratio", figures.plate_span_ratio.value_or(missing));
  add("plate screw density", figures.plate_screw_density);
  add("screws proximal", figures.fragments.front().screws);
  add("screws distal", figures.fragments.back().screws);
  add("cortices proximal", figures.fragments.front().cortices);
  add("cortices distal", figures.fragments.back().cortices);
  add("screws across", figures.screws_across);
  add("axial stiffness", outcome.stiffness.axial.value());
  add("stiffness about y", outcome.stiffness.bending_y.value());
  add("stiffness about z", outcome.stiffness.bending_z.value());
  add("stiffness in torsion", outcome.stiffness.torsion.value());
  const MarginFactors& margins = outcome.margins;
  add("margin of the plate, yield", margins.plate_yield.value_or(missing));
  add("margin of the plate, fatigue", margins.plate_fatigue.value_or(missing));
  add("margin of screws, yield", margins.screw_yield.value_or(missing));
  add("margin of screws, fatigue", margins.screw_fatigue.value_or(missing));
  add("margin of screws, pull-out", margins.screw_hold.value_or(missing));
  for (std::size_t k = 0; k < outcome.broken_rules.size(); ++k)
    add(fmt::format("rule {} broken", k + 1), outcome.broken_rules[k] ? 1.0 : 0.0);
  for (std::size_t k = 0; k < outcome.loads.size(); ++k) {
    const LoadOutcome& load = outcome.loads[k];
    const auto add_of_load = [&](const char* name, double value, double scale = 0.0) {
      add(fmt::format("{} of load {}", name, k + 1), value, scale);
    };
    const double motion = load.largest_motion.value();
    const double strain = std::max(load.gap_strain().value_or(0.0), load.shear_strain.value_or(0.0));
    const double force = std::max({load.screw_pull, load.across, load.plate_pressure}).value();
    add_of_load("peak stress", load.peak_stress.value());
    add_of_load("peak hole", load.peak_hole ? *load.peak_hole : missing);
    add_of_load("plate to yield", load.plate_to_yield.value_or(missing));
    add_of_load("least strain", load.axial_strain ? load.axial_strain->min : missing, strain);
    add_of_load("mean strain", load.axial_strain ? load.axial_strain->mean : missing, strain);
    add_of_load("largest strain", load.axial_strain ? load.axial_strain->max : missing, strain);
    add_of_load("shear strain", load.shear_strain.value_or(missing), strain);
    add_of_load("closed", load.closed);
    add_of_load("near motion", load.near_motion.value(), motion);
    add_of_load("far motion", load.far_motion.value(), motion);
    add_of_load("largest motion", motion);
    add_of_load("screw stress", load.screw_stress.value());
    add_of_load("screw to yield", load.screw_to_yield.value_or(missing));
    add_of_load("screw pull", load.screw_pull.value(), force);
    add_of_load("force across", load.across.value(), force);
    add_of_load("plate pressure", load.plate_pressure.value(), force);
    add_of_load("clearance", load.plate_clearance ? load.plate_clearance->value() : missing, motion);
    add_of_load("work", load.work);
  }
  return all;
}

Difference difference(const Outcome& outcome, const Outcome& expected) {
  const auto one = all_figures(outcome), other = all_figures(expected);
  constexpr double infinite = std::numeric_limits<double>::infinity();
  if (one.size() != other.size()) return {infinite, "count of loads"};
  Difference largest;
  for (std::size_t k = 0; k < one.size(); ++k) {
    if (std::isnan(one[k].value) && std::isnan(other[k].value)) continue;
    double value = std::abs(one[k].value - other[k].value);
    if (value > 0.0) value /= other[k].scale;
    if (std::isnan(value)) value = infinite;
    if (value > largest.value)
      largest = {value, fmt::format("{}: {:.15g} for {:.15g}", one[k].name, one[k].value, other[k].value)};
  }
  return largest;
}

bool same_bits(const Outcome& one, const Outcome& other) {
  const auto figures = all_figures(one), others = all_figures(other);
  return one.doubts == other.doubts &&
         std::equal(figures.begin(), figures.end(), others.begin(), others.end(),
                    [](const ScaledFigure& a, const ScaledFigure& b) {
                      return std::bit_cast<std::uint64_t>(a.value) == std::bit_cast<std::uint64_t>(b.value);
                    });
}

}  // namespace gapstrain::tests
