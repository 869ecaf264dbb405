#include "models/margins/margins_fatigue.h"
#include "models/margins/margins_list.h"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

namespace gapstrain::models {

namespace {

constexpr std::string_view shell_reads_high = "a shell reads up to 13 % high at a thick plate's rims";

std::string place_of(const std::optional<int>& hole, Length along, PlateFace face) {
  const char* level = face == PlateFace::top      ? "top face"
                      : face == PlateFace::bottom ? "bottom face"
                                                  : "middle of the wall";
  return hole ? fmt::format("at the rim of hole {}, {}", *hole, level)
              : fmt::format("{:.0f} mm from its proximal end, {}", along.value(), level);
}

void add_yield(const Construct& construct, const Findings& findings, MarginList& list) {
  const Metal& metal = construct.plate.material;
  if (!metal.yield_strength) {
    list.left_out.push_back(fmt::format("Plate, yield: no yield strength of \"{}\" is known.", metal.name));
    return;
  }
  const double yield = metal.yield_strength->value();
  const std::string limit = fmt::format("{} yields at {:.0f} MPa", metal.name, yield);
  const auto worst = std::max_element(
      findings.loads.begin(), findings.loads.end(),
      [](const auto& a, const auto& b) { return a.plate.peak.von_mises < b.plate.peak.von_mises; });
  const auto& steps = findings.compression.steps;
  Stress locked_in = 0.0 * mpa;
  for (const auto& step : steps) locked_in = std::max(locked_in, step.plate_peak);
  Margin margin{MarginKind::plate_yield, "plate, yield", "", 0.0, "", "", metal.source};
  if (worst == findings.loads.end() || locked_in > worst->plate.peak.von_mises) {
    margin.load = "in the steps";
    margin.factor = yield / locked_in.value();
    margin.sentence =
        fmt::format("In the steps alone the plate bears {:.0f} MPa (von Mises); {}.", locked_in.value(), limit);
  } else {
    const PlatePeak& peak = worst->plate.peak;
    margin.load = worst->load;
    margin.factor = yield / peak.von_mises.value();
    margin.sentence = fmt::format("Under \"{}\" the plate bears {:.0f} MPa (von Mises) {}; {}.", worst->load,
                                  peak.von_mises.value(), place_of(peak.hole, peak.along, peak.face), limit);
    margin.assumed = std::string(shell_reads_high);
  }
  list.add(std::move(margin), "Plate, yield: nothing strains it.");
}

void add_fatigue(const Construct& construct, const Findings& findings, MarginList& list) {
  const Plate& plate = construct.plate;
  const Metal& metal = plate.material;
  if (!metal.fatigue_strength) {
    list.left_out.push_back(fmt::format(
        "Plate, fatigue: no fatigue strength of \"{}\" is known; give ultimate_strength and fatigue_strength.",
        metal.name));
    return;
  }
  const EnduranceBand band = endurance_of(metal, plate.finish_factor, 1.0);
  std::vector<StressCycle> cycles;
  for (const auto& load : findings.loads) cycles.push_back(load.plate.fatigue.value().cycle);
  const auto asked = asked_cycles(construct, cycles);
  if (asked.empty()) return;
  const std::string assumed = fmt::format(
      "no corrosion or fretting (10 to 20 % is often taken off, from memory) and no spread of loads and activity, "
      "as the race "
      "has them; stress as on the first day; mean stress by Goodman; the holes' notches count in full; {}; the "
      "surface "
      "leaves "
      "{:.0f} % of the strength of smooth bars",
      shell_reads_high, 100.0 * plate.finish_factor);
  const std::string idle = "Plate, fatigue: no load strains it.";

  const FatigueFactor alone = worst_load_alone(band, asked);
  const auto& load = findings.loads[alone.load];
  const PlateFatigue& fatigue = *load.plate.fatigue;
  const Duty duty = *duty_of(construct, construct.loads[alone.load]);
  list.add({MarginKind::plate_fatigue, "plate, fatigue", load.load, alone.middle,
            fmt::format(
                "Under \"{}\" the plate's stress {} comes and goes by {}, which tires like {:.0f} MPa fully "
                "reversed; {}.",
                load.load, place_of(fatigue.hole, fatigue.along, fatigue.face), cycle_text(fatigue.cycle, metal),
                fatigue.reversed.value(), endurance_text(metal, band.middle, duty, alone)),
            assumed, metal.fatigue_strength->source},
           idle);
  if (const auto together = all_loads_together(band, asked))
    list.add({MarginKind::plate_fatigue_of_all_loads, "plate, fatigue under all loads",
              findings.loads[together->load].load, together->middle,
              together_text(construct, band, asked, *together, "the plate"),
              fmt::format("{}; {}", together_assumed, assumed), metal.fatigue_strength->source},
             idle);
}

}  // namespace

void add_plate_margins(const Construct& construct, const Findings& findings, MarginList& list) {
  add_yield(construct, findings, list);
  add_fatigue(construct, findings, list);
}

}  // namespace gapstrain::models
