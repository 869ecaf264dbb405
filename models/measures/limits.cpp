#include "models/measures/limits.h"

#include "models/measures/bent_parts.h"
#include "models/measures/compression.h"
#include "models/measures/face_pressure.h"
#include "models/measures/screw_forces.h"
#include "models/parts/tightening.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

namespace gapstrain::models {

namespace {

using Limits = std::vector<PassedLimit>;

constexpr double slip_worth_saying = 0.01;  // mm
constexpr double friction_used_up = 0.9;    // share of the limit from which on the plate slips

// Each screw once, at the state in which it is worst used.
Limits overloaded_screws(const Assembly& assembly, const StepState& made,
                         const std::vector<ConstructState>& loaded, const std::vector<LoadFindings>& loads) {
  Limits limits;
  std::set<std::pair<ScrewId, std::string>> said;  // clamps have their labels alone
  const auto look = [&](const ConstructState& state, const std::optional<std::string>& load) {
    for (const auto& held : measure_held(assembly, made, state)) {
      const double of_pull_out = held.of_pull_out.value_or(0.0), of_yield = held.of_yield.value_or(0.0);
      if ((of_pull_out <= 1.0 && of_yield <= 1.0) || !said.insert({held.screw, held.label}).second) continue;
      const double times = std::max(of_pull_out, of_yield), axial = held.axial.value();
      limits.push_back({of_pull_out >= of_yield ? LimitKind::pull_out : LimitKind::core_yield, held.screw,
                        held.label, load, axial, axial / times, FigureUnit::force, times});
    }
  };
  look(made, std::nullopt);
  for (std::size_t l = 0; l < loaded.size(); ++l) look(loaded[l], loads[l].load);
  return limits;
}

PassedLimit over_yield(LimitKind kind, const ScrewFindings& screw, const std::optional<std::string>& load,
                       double factor) {
  return {kind, screw.screw, screw.label, load, 1.0 / factor, 1.0, FigureUnit::ratio, 1.0 / factor};
}

// Shafts that the steps alone, or a load, strain past their yield while metals are taken as elastic; each screw
// once, at its worst.
Limits overstrained_screws(const Assembly& assembly, const StepState& made,
                           const std::vector<LoadFindings>& loads) {
  Limits limits;
  const auto at_rest = measure_screws(assembly, made.screws, made.pressed.solution);
  for (const auto& screw : at_rest) {
    const bool is_ball = std::any_of(made.tightened.begin(), made.tightened.end(), [&](int index) {
      return assembly.screws[static_cast<std::size_t>(index)].planned.screw.id == screw.screw;
    });
    if (is_ball && screw.factor_to_yield.value_or(2.0) < 1.0)
      limits.push_back(over_yield(LimitKind::over_yield_by_steps, screw, std::nullopt, *screw.factor_to_yield));
  }
  for (std::size_t k = 0; k < made.screws.size(); ++k) {
    if (at_rest[k].factor_to_yield.value_or(2.0) < 1.0) continue;
    const LoadFindings* worst = nullptr;
    double factor = 1.0;
    for (const auto& load : loads)
      for (const auto& screw : load.screws)
        if (screw.screw == at_rest[k].screw && screw.factor_to_yield.value_or(2.0) < factor) {
          factor = *screw.factor_to_yield;
          worst = &load;
        }
    if (worst != nullptr)
      limits.push_back(over_yield(LimitKind::over_yield_by_load, at_rest[k], worst->load, factor));
  }
  return limits;
}

// Parts that stay bent: by the steps, and by the load that bends each most beyond that.
Limits bent_for_good(const Assembly& assembly, const StepState& made, const std::vector<ConstructState>& loaded,
                     const std::vector<LoadFindings>& loads) {
  Limits limits;
  const auto add = [&](LimitKind kind, const BentPart& part, const std::optional<std::string>& load) {
    limits.push_back({kind, part.screw, part.label, load, in_degrees(part.turn), in_degrees(turn_worth_saying),
                      FigureUnit::angle});
  };
  for (const auto& part : bent_parts(assembly, made.screws, made.yielded))
    add(LimitKind::bent_by_steps, part, std::nullopt);
  std::map<std::pair<ScrewId, std::string>, std::pair<BentPart, std::string>> worst;
  for (std::size_t l = 0; l < loaded.size(); ++l) {
    solver::Yielded more = loaded[l].yielded;
    more.deformed -= made.yielded.deformed;
    for (const auto& part : bent_parts(assembly, made.screws, more)) {
      const auto [entry, is_new] = worst.try_emplace({part.screw, part.label}, part, loads[l].load);
      if (!is_new && entry->second.first.turn < part.turn) entry->second = {part, loads[l].load};
    }
  }
  for (const auto& [key, part] : worst) add(LimitKind::bent_by_load, part.first, part.second);
  return limits;
}

Limits lost_preloads(const Assembly& assembly, const StepState& made, const std::vector<ConstructState>& loaded,
                     const std::vector<LoadFindings>& loads) {
  Limits limits;
  std::set<ScrewId> said;  // clamps have no pull-out
  for (std::size_t l = 0; l < loaded.size(); ++l)
    for (const auto& held : measure_held(assembly, made, loaded[l]))
      if (held.of_pull_out && held.axial <= 0.0 * newton && said.insert(held.screw).second)
        limits.push_back({LimitKind::preload_lost, held.screw, held.label, loads[l].load, held.axial.value(), 0.0,
                          FigureUnit::force});
  return limits;
}

Limits gaping(const std::vector<LoadFindings>& loads) {
  Limits limits;
  for (const auto& load : loads) {
    if (!load.gapes) continue;
    Length widest;
    for (const auto& point : load.face.points) widest = std::max(widest, point.opening);
    PassedLimit limit{.kind = LimitKind::gap_gapes, .load = load.load, .unit = FigureUnit::length};
    limit.value = widest.value();
    limit.limit = gaping_opening;
    limit.touching = load.face.touching;
    limits.push_back(std::move(limit));
  }
  return limits;
}

Limits slipping(const Assembly& assembly, const StepState& made, const std::vector<ConstructState>& loaded,
                const std::vector<LoadFindings>& loads) {
  Limits limits;
  if (made.tightened.empty()) return limits;
  for (std::size_t l = 0; l < loaded.size(); ++l)
    for (std::size_t fragment = 0; fragment < assembly.fragments.size(); ++fragment) {
      const double slip = underside_slip(assembly, made, loaded[l], fragment).value();
      if (slip < slip_worth_saying || loads[l].friction_use.value_or(0.0) < friction_used_up) continue;
      PassedLimit limit{.kind = LimitKind::plate_slips, .load = loads[l].load, .unit = FigureUnit::length};
      limit.value = slip;
      limit.limit = slip_worth_saying;
      limit.fragment = fragment;
      limits.push_back(std::move(limit));
    }
  return limits;
}

Limits used_slots(const Assembly& assembly, const StepState& made) {
  Limits limits;
  for (const int index : made.screws) {
    const Screw& screw = assembly.screws[static_cast<std::size_t>(index)].planned.screw;
    if (screw.kind != ScrewKind::compression) continue;
    const double asked = tightened_slide(screw).value();
    const double done = std::abs(assembly.screws[static_cast<std::size_t>(index)].planned.placement.slide);
    if (done >= asked - 1e-9) continue;
    PassedLimit limit{LimitKind::slot_used_up, screw.id, screw.label, {}, asked, done, FigureUnit::length};
    limit.hole = screw.hole;
    limits.push_back(std::move(limit));
  }
  return limits;
}

Limits left_in(const Assembly& assembly, const StepState& made) {
  Limits limits;
  for (const int index : made.holds)
    limits.push_back(
        {.kind = LimitKind::hold_left_in, .label = assembly.holds[static_cast<std::size_t>(index)].hold.label});
  return limits;
}

}  // namespace

std::vector<PassedLimit> find_limits(const Assembly& assembly, const StepState& made,
                                     const std::vector<ConstructState>& loaded,
                                     const std::vector<LoadFindings>& loads) {
  Limits all;
  for (const auto& limits :
       {overloaded_screws(assembly, made, loaded, loads),
        assembly.yields.sections.empty() ? overstrained_screws(assembly, made, loads)
                                         : bent_for_good(assembly, made, loaded, loads),
        lost_preloads(assembly, made, loaded, loads), gaping(loads), slipping(assembly, made, loaded, loads),
        used_slots(assembly, made), left_in(assembly, made)})
    all.insert(all.end(), limits.begin(), limits.end());
  return all;
}

}  // namespace gapstrain::models
