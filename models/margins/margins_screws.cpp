#include "models/findings/model_error.h"
#include "models/margins/margins_list.h"
#include "models/margins/screw_holding.h"
#include "models/stress/screw_notch.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <string_view>
#include <utility>

namespace gapstrain::models {

namespace {

// A screw of the construct and what each load does to it.
struct LoadedScrew {
  const Screw* screw;
  std::vector<const ScrewFindings*> loads;  // in the order of Findings::loads
};

// Those that are in after the last step. @throw ModelError for screws that cannot be told apart
std::vector<LoadedScrew> loaded_screws(const Construct& construct, const Findings& findings) {
  if (!are_numbered(construct.screws))
    throw ModelError("screws are not numbered: their loads cannot be told apart");
  std::vector<LoadedScrew> all;
  for (const auto& screw : construct.screws) {
    LoadedScrew loaded{&screw, {}};
    for (const auto& load : findings.loads)
      for (const auto& entry : load.screws)
        if (entry.screw == screw.id) loaded.loads.push_back(&entry);
    if (!loaded.loads.empty()) all.push_back(std::move(loaded));
  }
  return all;
}

// Null for a screw that is not tightened.
const HeldForce* held_after_steps(const Findings& findings, ScrewId screw) {
  if (findings.compression.steps.empty()) return nullptr;
  return find_held(findings.compression.steps.back().held, screw);
}

void add_yield(const LoadedScrew& loaded, const Findings& findings, MarginList& list) {
  const Metal& metal = loaded.screw->material;
  if (!metal.yield_strength) {
    list.left_out.emplace_back(UnknownStrength{MarginKind::screw_yield, metal.name, loaded.screw->id});
    return;
  }
  double least = std::numeric_limits<double>::infinity();
  std::size_t worst = 0;
  for (std::size_t l = 0; l < loaded.loads.size(); ++l)
    if (const auto& factor = loaded.loads[l]->factor_to_yield; factor && *factor < least) {
      least = *factor;
      worst = l;
    }
  Margin margin{MarginKind::screw_yield,
                findings.loads[worst].load,
                least,
                metal.source,
                false,
                loaded.screw->id,
                YieldBasis{*metal.yield_strength / least, *metal.yield_strength, {}}};
  const HeldForce* held = held_after_steps(findings, loaded.screw->id);
  if (held != nullptr && held->of_yield && *held->of_yield > 1.0 / least) {
    margin.load = "after the last step";
    margin.factor = 1.0 / *held->of_yield;
    margin.basis = PreloadBasis{held->axial, held->axial / *held->of_yield};
  }
  list.add(std::move(margin));
}

void add_fatigue(const Construct& construct, const LoadedScrew& loaded, MarginList& list) {
  const Metal& metal = loaded.screw->material;
  if (!metal.fatigue_strength) {
    list.left_out.emplace_back(UnknownStrength{MarginKind::screw_fatigue, metal.name, loaded.screw->id});
    return;
  }
  const auto at = [&](NotchBasis notch, StressCycle ScrewFindings::*cycle, std::string_view source) {
    RepeatedLoads loads{.alone = MarginKind::screw_fatigue,
                        .together = MarginKind::screw_fatigue_of_all_loads,
                        .metal = metal,
                        .notch = notch,
                        .source = fmt::format("{}; {}", metal.fatigue_strength->source, source),
                        .cycles = {},
                        .locations = {},
                        .screw = loaded.screw->id};
    for (const auto* load : loaded.loads) loads.cycles.push_back(load->*cycle);
    MarginList found;
    add_fatigue_margins(construct, loads, found);
    return found;
  };
  // The place that has less in hand speaks for the screw.
  MarginList at_head = at({head_notch(*loaded.screw), false}, &ScrewFindings::head_cycle, head_notch_source);
  MarginList in_bone = at({thread_notch(*loaded.screw), true}, &ScrewFindings::thread_cycle, thread_notch_source);
  const Margin *head = least_margin(at_head.margins), *thread = least_margin(in_bone.margins);
  const bool is_thread = thread != nullptr && (head == nullptr || thread->factor < head->factor);
  list.add_all(is_thread ? std::move(in_bone) : std::move(at_head));
}

void add_hold(const LoadedScrew& loaded, const Findings& findings, MarginList& list) {
  std::vector<std::vector<CortexForce>> cortices;
  for (const auto* load : loaded.loads) cortices.push_back(load->cortices);
  const HeldForce* held = held_after_steps(findings, loaded.screw->id);
  const LeastHold least = least_hold(*loaded.screw, cortices, held);
  Margin margin{MarginKind::screw_hold,
                "after the last step",
                least.factor,
                std::string(screw_holding_source),
                least.indicative,
                loaded.screw->id,
                {}};
  if (least.load) {
    const ScrewHolding holding = *screw_holding(loaded.screw->size, cortices[*least.load]);
    margin.load = findings.loads[*least.load].load;
    margin.basis = HoldBasis{holding.pull, holding.pull_out, holding.shear, holding.bearing, holding.far};
  } else if (std::isfinite(least.factor)) {
    margin.basis = PreloadBasis{held->axial, held->axial / *held->of_pull_out};
  }
  list.add(std::move(margin));
}

}  // namespace

void add_screw_margins(const Construct& construct, const Findings& findings, MarginList& list) {
  for (const auto& loaded : loaded_screws(construct, findings)) {
    add_yield(loaded, findings, list);
    add_fatigue(construct, loaded, list);
    add_hold(loaded, findings, list);
  }
}

}  // namespace gapstrain::models
