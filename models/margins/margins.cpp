#include "models/margins/margins.h"

#include "models/margins/margins_fatigue.h"
#include "models/margins/margins_list.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <iterator>
#include <map>
#include <set>
#include <utility>

namespace gapstrain::models {

namespace {

MarginList collect(const Construct& construct, const Findings& findings) {
  assert(construct.loads.size() == findings.loads.size());
  MarginList list;
  for (const auto& load : construct.loads)
    if (!duty_of(construct, load)) list.left_out.emplace_back(LoadOutsideDay{load.name});
  add_plate_margins(construct, findings, list);
  add_screw_margins(construct, findings, list);
  add_bone_margins(construct, findings, list);
  return list;
}

template <class Counts>
const Margin* least_of(const std::vector<Margin>& margins, const Counts& counts) {
  const Margin* least = nullptr;
  for (const Margin& margin : margins)
    if (counts(margin) && (least == nullptr || margin.factor < least->factor)) least = &margin;
  return least;
}

}  // namespace

void MarginList::add(Margin margin) {
  if (std::isfinite(margin.factor))
    margins.push_back(std::move(margin));
  else
    left_out.emplace_back(NotStrained{margin.kind, margin.screw});
}

void MarginList::add_all(MarginList other) {
  std::move(other.margins.begin(), other.margins.end(), std::back_inserter(margins));
  std::move(other.left_out.begin(), other.left_out.end(), std::back_inserter(left_out));
}

void add_fatigue_margins(const Construct& construct, const RepeatedLoads& loads, MarginList& list) {
  const EnduranceBand band = endurance_of(loads.metal, loads.finish, loads.notch.factor);
  const auto asked = asked_cycles(construct, loads.cycles);
  if (asked.empty()) return;
  const auto margin = [&](MarginKind kind, const FatigueFactor& factor, MarginBasis basis) {
    list.add({kind, construct.loads[factor.load].name, factor.range.middle, loads.source, false, loads.screw,
              std::move(basis)});
  };
  const FatigueFactor alone = worst_load_alone(band, asked);
  const StressCycle& cycle = loads.cycles[alone.load];
  const double count = duty_of(construct, construct.loads[alone.load])->cycles;
  FatigueBasis basis{cycle,
                     reversed_amplitude(cycle, *loads.metal.ultimate_strength, loads.metal.yield_strength),
                     strength_at(band.middle.line, count),
                     count,
                     alone.range,
                     {},
                     loads.notch};
  if (!loads.locations.empty()) basis.location = loads.locations[alone.load];
  margin(loads.alone, alone, std::move(basis));

  const auto together = all_loads_together(band, asked);
  if (!together) return;
  margin(loads.together, *together,
         DamageBasis{fatigue_damage(band.middle, repeated_cycles(asked)), construct.healing->weeks_to,
                     together->range, loads.notch});
}

CollectedMargins collect_margins(const Construct& construct, const Findings& findings) {
  MarginList list = collect(construct, findings);
  std::map<ScrewId, std::string> labels;
  for (const auto& screw : construct.screws) labels[screw.id] = screw.label;
  const auto label = [&labels](auto& part) {
    if constexpr (requires { part.screw; })
      if (part.screw != ScrewId::none) part.label = labels[part.screw];
  };
  for (auto& margin : list.margins) label(margin);
  for (auto& left_out : list.left_out) std::visit(label, left_out);
  std::stable_sort(list.margins.begin(), list.margins.end(),
                   [](const Margin& one, const Margin& other) { return one.factor < other.factor; });
  return {std::move(list.margins), std::move(list.left_out)};
}

bool is_of_all_loads(MarginKind kind) {
  return kind == MarginKind::plate_fatigue_of_all_loads || kind == MarginKind::screw_fatigue_of_all_loads;
}

bool is_fatigue(MarginKind kind) {
  return kind == MarginKind::plate_fatigue || kind == MarginKind::screw_fatigue || is_of_all_loads(kind);
}

std::vector<Margin> failing(const std::vector<Margin>& margins) {
  std::vector<Margin> found;
  std::copy_if(margins.begin(), margins.end(), std::back_inserter(found),
               [](const Margin& margin) { return margin.factor < 1.0 && !margin.indicative; });
  return found;
}

const Margin* least_margin(const std::vector<Margin>& margins) {
  return least_of(margins, [](const Margin& margin) { return !margin.indicative; });
}

const Margin* least_margin(const std::vector<Margin>& margins, const std::set<MarginKind>& kinds) {
  return least_of(margins,
                  [&](const Margin& margin) { return !margin.indicative && kinds.contains(margin.kind); });
}

std::vector<Margin> worst_of_each_kind(const std::vector<Margin>& margins) {
  std::vector<Margin> worst;
  std::set<MarginKind> seen;
  const auto kind = [](const Margin& margin) {
    if (margin.kind == MarginKind::plate_fatigue_of_all_loads) return MarginKind::plate_fatigue;
    if (margin.kind == MarginKind::screw_fatigue_of_all_loads) return MarginKind::screw_fatigue;
    return margin.kind;
  };
  for (const auto& margin : margins)
    if (seen.insert(kind(margin)).second) worst.push_back(margin);
  return worst;
}

}  // namespace gapstrain::models
