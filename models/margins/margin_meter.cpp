#include "models/margins/margin_meter.h"

#include "models/findings/model_error.h"
#include "models/margins/screw_holding.h"
#include "models/measures/screw_forces.h"
#include "models/stress/screw_notch.h"

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

std::optional<Endurance> middle_endurance(const Metal& metal, double finish, double notch) {
  if (!metal.fatigue_strength) return std::nullopt;
  return endurance_of(metal, finish, notch).middle;
}

void lower(std::optional<double>& least, double factor) {
  if (std::isfinite(factor) && !(least && *least <= factor)) least = factor;
}

}  // namespace

MarginMeter::MarginMeter(const Assembly& assembly) : assembly_(assembly) {
  const Construct& construct = assembly.construct;
  const Plate& plate = only(construct.plates);
  std::size_t asked = 0;
  for (const auto& load : construct.loads) {
    const auto duty = duty_of(construct, load);
    cycles_.push_back(duty ? duty->cycles : 0.0);
    if (!duty) continue;
    ++asked;
    all_together_ = duty->is_daily;
  }
  all_together_ = all_together_ && asked > 1;
  plate_ = middle_endurance(plate.material, plate.finish_factor, 1.0);
  for (const auto& candidate : assembly.screws) {
    const Screw& screw = candidate.planned.screw;
    if (screw.id == ScrewId::none)
      throw ModelError("screws are not numbered: their preloads cannot be told apart");
    const auto at_head = middle_endurance(screw.material, 1.0, head_notch(screw));
    const auto in_bone = middle_endurance(screw.material, 1.0, thread_notch(screw));
    screws_.push_back(at_head ? std::optional(ScrewEndurance{*at_head, *in_bone}) : std::nullopt);
  }
}

double MarginMeter::fatigue(const Endurance& endurance, const std::vector<StressCycle>& one_a_load) const {
  std::vector<RepeatedCycle> asked;
  for (std::size_t load = 0; load < cycles_.size(); ++load)
    if (cycles_[load] > 0.0) asked.push_back({one_a_load[load], cycles_[load]});
  return least_fatigue_factor(endurance, asked, all_together_);
}

MarginFactors MarginMeter::measure(const std::vector<int>& chosen, const MadeConstruct& made,
                                   const std::vector<CarriedState>& loaded,
                                   const std::vector<LoadOutcome>& outcomes) const {
  MarginFactors factors;
  Stress plate_peak = made.plate_peak;
  for (const auto& outcome : outcomes) {
    plate_peak = std::max(plate_peak, outcome.peak_stress);
    if (outcome.screw_to_yield) lower(factors.screw_yield, *outcome.screw_to_yield);
  }
  if (const auto& yield = only(assembly_.construct.plates).material.yield_strength)
    lower(factors.plate_yield, (*yield / plate_peak).value());
  if (plate_) {
    std::vector<StressCycle> cycles;
    for (const auto& outcome : outcomes) cycles.push_back(outcome.plate_cycle.value());
    lower(factors.plate_fatigue, fatigue(*plate_, cycles));
  }

  std::vector<StressCycle> at_head(loaded.size()), in_bone(loaded.size());
  std::vector<std::vector<CortexForce>> cortices(loaded.size());
  for (const int index : chosen) {
    const auto k = static_cast<std::size_t>(index);
    const CandidateScrew& candidate = assembly_.screws[k];
    const Screw& screw = candidate.planned.screw;
    for (std::size_t load = 0; load < loaded.size(); ++load) {
      cortices[load] = cortex_forces(assembly_, candidate, loaded[load].pressed.forces);
      if (!screws_[k]) continue;
      const ScrewCycles cycles =
          screw_cycles(assembly_, candidate, made.state.pressed.forces, loaded[load].pressed.forces);
      at_head[load] = cycles.head;
      in_bone[load] = cycles.thread;
    }
    const HeldForce* held = find_held(made.held, screw.id);
    if (held != nullptr && held->of_yield && *held->of_yield > 0.0)
      lower(factors.screw_yield, 1.0 / *held->of_yield);
    if (screws_[k]) {
      lower(factors.screw_fatigue, fatigue(screws_[k]->at_head, at_head));
      lower(factors.screw_fatigue, fatigue(screws_[k]->in_bone, in_bone));
    }
    if (const LeastHold hold = least_hold(screw, cortices, held); !hold.indicative)
      lower(factors.screw_hold, hold.factor);
  }
  return factors;
}

}  // namespace gapstrain::models
