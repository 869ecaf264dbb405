#include "models/margins/margins_list.h"

#include <algorithm>

namespace gapstrain::models {

namespace {

void add_yield(const Construct& construct, const Findings& findings, MarginList& list) {
  const Metal& metal = only(construct.plates).material;
  if (!metal.yield_strength) {
    list.left_out.emplace_back(UnknownStrength{MarginKind::plate_yield, metal.name});
    return;
  }
  const Stress yield = *metal.yield_strength;
  const auto worst = std::max_element(
      findings.loads.begin(), findings.loads.end(),
      [](const auto& a, const auto& b) { return a.plate.peak.von_mises < b.plate.peak.von_mises; });
  Stress locked_in = 0.0 * mpa;
  for (const auto& step : findings.compression.steps) locked_in = std::max(locked_in, step.plate_peak);
  Margin margin{MarginKind::plate_yield, "in the steps", 0.0, metal.source};
  YieldBasis basis{locked_in, yield, {}};
  if (worst != findings.loads.end() && !(locked_in > worst->plate.peak.von_mises)) {
    const PlatePeak& peak = worst->plate.peak;
    margin.load = worst->load;
    basis.stress = peak.von_mises;
    basis.location = {peak.hole, peak.along, peak.face};
  }
  margin.factor = yield / basis.stress;
  margin.basis = basis;
  list.add(std::move(margin));
}

void add_fatigue(const Construct& construct, const Findings& findings, MarginList& list) {
  const Plate& plate = only(construct.plates);
  const Metal& metal = plate.material;
  if (!metal.fatigue_strength) {
    list.left_out.emplace_back(UnknownStrength{MarginKind::plate_fatigue, metal.name});
    return;
  }
  RepeatedLoads loads{.alone = MarginKind::plate_fatigue,
                      .together = MarginKind::plate_fatigue_of_all_loads,
                      .metal = metal,
                      .finish = plate.finish_factor,
                      .source = metal.fatigue_strength->source,
                      .cycles = {},
                      .locations = {}};
  for (const auto& load : findings.loads) {
    const PlateFatigue& fatigue = load.plate.fatigue.value();
    loads.cycles.push_back(fatigue.cycle);
    loads.locations.push_back({fatigue.hole, fatigue.along, fatigue.face});
  }
  add_fatigue_margins(construct, loads, list);
}

}  // namespace

void add_plate_margins(const Construct& construct, const Findings& findings, MarginList& list) {
  add_yield(construct, findings, list);
  add_fatigue(construct, findings, list);
}

}  // namespace gapstrain::models
