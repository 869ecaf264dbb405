#include "models/margins/margins.h"

#include "models/margins/margins_fatigue.h"
#include "models/margins/margins_list.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <iterator>
#include <set>
#include <utility>

namespace gapstrain::models {

namespace {

MarginList collect(const Construct& construct, const Findings& findings) {
  assert(construct.loads.size() == findings.loads.size());
  MarginList list;
  for (const auto& load : construct.loads)
    if (!duty_of(construct, load))
      list.left_out.push_back(
          fmt::format("Fatigue under \"{}\": it has no cycles_per_day while other loads have, so it is no part of "
                      "the patient's "
                      "day.",
                      load.name));
  add_plate_margins(construct, findings, list);
  add_screw_margins(construct, findings, list);
  add_bone_margins(construct, findings, list);
  return list;
}

}  // namespace

void MarginList::add(Margin margin, const std::string& why) {
  if (std::isfinite(margin.factor))
    margins.push_back(std::move(margin));
  else
    left_out.push_back(why);
}

std::vector<Margin> find_margins(const Construct& construct, const Findings& findings) {
  auto margins = collect(construct, findings).margins;
  std::stable_sort(margins.begin(), margins.end(),
                   [](const Margin& one, const Margin& other) { return one.factor < other.factor; });
  return margins;
}

std::vector<std::string> margins_left_out(const Construct& construct, const Findings& findings) {
  return collect(construct, findings).left_out;
}

std::vector<Margin> failing(const std::vector<Margin>& margins) {
  std::vector<Margin> found;
  std::copy_if(margins.begin(), margins.end(), std::back_inserter(found),
               [](const Margin& margin) { return margin.factor < 1.0 && !margin.indicative; });
  return found;
}

const Margin* least_margin(const std::vector<Margin>& margins) {
  const auto found = std::find_if(margins.begin(), margins.end(), [](const Margin& m) { return !m.indicative; });
  return found == margins.end() ? nullptr : &*found;
}

const Margin* least_margin(const std::vector<Margin>& margins, const std::set<MarginKind>& kinds) {
  const auto found = std::find_if(margins.begin(), margins.end(),
                                  [&](const Margin& m) { return !m.indicative && kinds.contains(m.kind); });
  return found == margins.end() ? nullptr : &*found;
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
