#include "models/findings/working_length.h"

#include "models/findings/figures.h"
#include "models/findings/gap_strain.h"
#include "models/findings/plate_stress.h"
#include "models/findings/solve.h"
#include "models/findings/stiffness.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

// Nearest free round hole from `hole` in steps of `step`; 0 when the plate ends first.
int next_free_hole(const Construct& construct, int hole, int step) {
  const auto count = static_cast<int>(construct.plate.holes.size());
  for (int next = hole + step; next >= 1 && next <= count; next += step) {
    const bool taken = std::any_of(construct.screws.begin(), construct.screws.end(),
                                   [&](const Screw& screw) { return screw.hole == next; });
    const bool fits = construct.plate.holes[static_cast<std::size_t>(next - 1)].shape == HoleShape::round;
    if (!taken && fits) return next;
  }
  return 0;
}

ScrewVariant variant(const Construct& construct, bool further_out) {
  ScrewVariant result{further_out, {}, {}};
  const auto [proximal, distal] = innermost_screws(construct);
  Construct moved = construct;
  for (const auto& [index, towards_fracture] : {std::pair{proximal, 1}, std::pair{distal, -1}}) {
    Screw& screw = moved.screws[index];
    const int hole = next_free_hole(construct, screw.hole, further_out ? -towards_fracture : towards_fracture);
    if (hole == 0) {
      result.unavailable =
          fmt::format("no free hole {} of screw \"{}\"", further_out ? "outside" : "inside", screw.label);
      return result;
    }
    screw.hole = hole;
    screw.label = fmt::format("{} in hole {}", screw.label, hole);
  }
  for (const auto& problem : check(moved)) {
    if (problem.severity == Severity::error) {
      result.unavailable = problem.message;
      return result;
    }
  }
  result.screws = std::move(moved.screws);
  return result;
}

// The few figures that layouts are compared by.
struct Brief {
  double peak_stress = 0.0, gap_strain = 0.0, gap_motion = 0.0, stiffness = 0.0;
};

Brief brief(const Assembly& assembly, const std::vector<int>& chosen, const AssembledLoad& load) {
  const solver::Solution solution = solve_load(assembly, chosen, load);
  const GapFindings gap = measure_gap(assembly, solution);
  Brief result;
  result.peak_stress = sampled_peak(assembly, solution);
  result.gap_strain = std::max(std::abs(gap.axial_strain.min), std::abs(gap.axial_strain.max));
  for (const auto& point : gap.edge)
    result.gap_motion =
        std::max(result.gap_motion, std::hypot(point.axial_motion.value(), point.shear_motion.value()));
  result.stiffness = 1.0 / compliance(load, solution);
  return result;
}

}  // namespace

std::vector<ScrewVariant> working_length_variants(const Construct& construct) {
  return {variant(construct, true), variant(construct, false)};
}

std::vector<WorkingLengthVariant> measure_working_length_effect(const Assembly& assembly,
                                                                const std::vector<ScrewVariant>& variants,
                                                                const AssembledLoad& load) {
  const Brief base = brief(assembly, chosen_screws(assembly, assembly.construct.screws), load);
  std::vector<WorkingLengthVariant> effects;
  for (const auto& variant : variants) {
    WorkingLengthVariant effect;
    effect.further_out = variant.further_out;
    effect.unavailable = variant.unavailable;
    if (!variant.unavailable) {
      Construct moved = assembly.construct;
      moved.screws = variant.screws;
      effect.working_length = measure_figures(moved).working_length;
      const Brief other = brief(assembly, chosen_screws(assembly, variant.screws), load);
      const auto change = [](double to, double from) { return from == 0.0 ? 0.0 : (to - from) / from; };
      effect.peak_stress = change(other.peak_stress, base.peak_stress);
      effect.gap_strain = change(other.gap_strain, base.gap_strain);
      effect.gap_motion = change(other.gap_motion, base.gap_motion);
      effect.stiffness = change(other.stiffness, base.stiffness);
    }
    effects.push_back(std::move(effect));
  }
  return effects;
}

}  // namespace gapstrain::models
