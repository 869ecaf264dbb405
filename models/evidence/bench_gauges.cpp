#include "models/evidence/bench_gauges.h"

#include "models/assembly/insertion.h"
#include "models/measures/solve.h"
#include "models/stress/body_stress.h"
#include "models/stress/plate_sections.h"

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

std::vector<double> gauge_strains(const Assembly& assembly, const std::vector<int>& chosen, std::size_t load,
                                  const std::vector<double>& along) {
  Construct construct = assembly.construct;
  construct.screws.clear();
  for (const int index : chosen)
    construct.screws.push_back(assembly.screws[static_cast<std::size_t>(index)].planned.screw);
  const auto steps = carry_out(assembly, procedure_of(construct, chosen));
  const StepState& made = steps.back();
  const solver::Solution loaded = solve_load(assembly, made, assembly.loads[load]).pressed.solution;
  const auto stations = [&](const solver::Solution& solution) {
    const auto displacements = recover_displacements(assembly, {solution})[only_plate_body];
    const auto stress = read_stress(assembly.bodies[only_plate_body].body->shell(), displacements).front();
    return plate_stations(assembly, solution, stress);
  };
  const auto under = stations(loaded), before = stations(made.pressed.solution);

  std::vector<double> strains;
  for (const double place : along) {
    const auto nearest =
        std::min_element(under.begin(), under.end(), [&](const PlateStation& a, const PlateStation& b) {
          return std::abs(a.along.value() - place) < std::abs(b.along.value() - place);
        });
    const auto k = static_cast<std::size_t>(nearest - under.begin());
    const Stress change = under[k].surface_top - before[k].surface_top;
    strains.push_back(change / only(assembly.construct.plates).material.youngs_modulus);
  }
  return strains;
}

}  // namespace gapstrain::models
