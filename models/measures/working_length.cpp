#include "models/measures/working_length.h"

#include "models/checks/checks.h"
#include "models/measures/figures.h"
#include "models/measures/gap_strain.h"
#include "models/measures/second_order_effects.h"
#include "models/measures/solve.h"
#include "models/measures/stiffness.h"
#include "models/stress/plate_stress.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

// Nearest free hole of the same fragment that takes the screw, in steps of `step`; 0 when there is none.
int next_free_hole(const Construct& construct, const Screw& moved, int step) {
  const auto count = static_cast<int>(only(construct.plates).holes.size());
  const double fracture = fracture_along(construct);
  const auto is_distal = [&](int hole) {
    return only(construct.plates).holes[static_cast<std::size_t>(hole - 1)].position.value() >= fracture;
  };
  for (int next = moved.hole + step; next >= 1 && next <= count; next += step) {
    const bool taken = std::any_of(construct.screws.begin(), construct.screws.end(),
                                   [&](const Screw& screw) { return screw.hole == next; });
    const HoleShape shape = only(construct.plates).holes[static_cast<std::size_t>(next - 1)].shape;
    if (is_distal(next) != is_distal(moved.hole)) return 0;
    if (!taken && fits_hole(moved.kind, shape)) return next;
  }
  return 0;
}

ScrewVariant variant(const Construct& construct, bool further_out) {
  ScrewVariant result{further_out, {}, {}};
  const auto [proximal, distal] = innermost_screws(construct);
  Construct moved = construct;
  for (const auto& [index, towards_fracture] : {std::pair{proximal, 1}, std::pair{distal, -1}}) {
    Screw& screw = moved.screws[index];
    const int hole = next_free_hole(construct, screw, further_out ? -towards_fracture : towards_fracture);
    if (hole == 0) {
      result.unavailable =
          fmt::format("no free hole {} of screw \"{}\"", further_out ? "outside" : "inside", screw.label);
      return result;
    }
    screw.hole = hole;
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

// The construct with a variant's screws in place of its own.
Construct with_screws(const Construct& construct, const std::vector<Screw>& screws) {
  Construct moved = construct;
  moved.screws = screws;
  return moved;
}

// The few figures that layouts are compared by.
struct Brief {
  double peak_stress = 0.0, gap_motion = 0.0, stiffness = 0.0;
  std::optional<double> gap_strain;
};

Brief brief(const Assembly& assembly, const ConstructState& made, const AssembledLoad& load) {
  const ConstructState loaded = solve_load(assembly, made, load);
  const GapFindings gap = measure_gap(assembly, made, loaded);
  Brief result;
  result.peak_stress = sampled_peak(assembly, demanded(loaded).solution);
  if (gap.axial_strain)
    result.gap_strain = std::max(std::abs(gap.axial_strain->min), std::abs(gap.axial_strain->max));
  result.gap_motion = gap.largest_motion.value();
  result.stiffness = 1.0 / (work_on(load, loaded.pressed.forces - made.pressed.forces,
                                    loaded.pressed.amplitudes - made.pressed.amplitudes) +
                            work_on_added(assembly, load, loaded.second_order));
  return result;
}

}  // namespace

std::vector<ScrewVariant> working_length_variants(const Construct& construct) {
  return {variant(construct, true), variant(construct, false)};
}

std::vector<std::optional<ConstructState>> make_variants(const Assembly& assembly,
                                                         const std::vector<ScrewVariant>& variants) {
  std::vector<std::optional<ConstructState>> made;
  for (const auto& variant : variants) {
    made.emplace_back();
    if (variant.unavailable) continue;
    const Construct moved = with_screws(assembly.construct, variant.screws);
    const Procedure procedure = procedure_of(moved, chosen_screws(assembly, moved.screws));
    made.back() = carry_out(assembly, procedure).back();
  }
  return made;
}

std::vector<WorkingLengthVariant> measure_working_length_effect(
    const Assembly& assembly, const ConstructState& made, const std::vector<ScrewVariant>& variants,
    const std::vector<std::optional<ConstructState>>& variants_made, const AssembledLoad& load) {
  const Brief base = brief(assembly, made, load);
  std::vector<WorkingLengthVariant> effects;
  for (std::size_t k = 0; k < variants.size(); ++k) {
    WorkingLengthVariant effect;
    effect.further_out = variants[k].further_out;
    effect.unavailable = variants[k].unavailable;
    if (variants_made[k]) {
      effect.working_length = measure_figures(with_screws(assembly.construct, variants[k].screws)).working_length;
      const Brief other = brief(assembly, *variants_made[k], load);
      const auto change = [](double to, double from) { return from == 0.0 ? 0.0 : (to - from) / from; };
      effect.peak_stress = change(other.peak_stress, base.peak_stress);
      if (other.gap_strain && base.gap_strain) effect.gap_strain = change(*other.gap_strain, *base.gap_strain);
      effect.gap_motion = change(other.gap_motion, base.gap_motion);
      effect.stiffness = change(other.stiffness, base.stiffness);
    }
    effects.push_back(std::move(effect));
  }
  return effects;
}

}  // namespace gapstrain::models
