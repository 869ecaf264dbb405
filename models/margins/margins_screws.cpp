#include "models/margins/margins_fatigue.h"
#include "models/margins/margins_list.h"
#include "models/margins/screw_holding.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace gapstrain::models {

namespace {

// A screw of the construct and what each load does to it.
struct LoadedScrew {
  const Screw* screw;
  std::vector<const ScrewFindings*> loads;  // in the order of Findings::loads

  std::string name() const {
    return screw->hole > 0 ? fmt::format("{} (hole {})", screw->label, screw->hole)
                           : fmt::format("{} (beside the plate)", screw->label);
  }
  std::string part(const char* what) const { return fmt::format("screw {}, {}", screw->label, what); }
};

// Those that are in after the last step.
std::vector<LoadedScrew> loaded_screws(const Construct& construct, const Findings& findings) {
  std::vector<LoadedScrew> all;
  for (const auto& screw : construct.screws) {
    LoadedScrew loaded{&screw, {}};
    for (const auto& load : findings.loads)
      for (const auto& entry : load.screws)
        if (entry.label == screw.label) loaded.loads.push_back(&entry);
    if (!loaded.loads.empty()) all.push_back(std::move(loaded));
  }
  return all;
}

// Null for a screw that is not tightened.
const HeldForce* held_after_steps(const Findings& findings, const std::string& label) {
  if (findings.compression.steps.empty()) return nullptr;
  return find_held(findings.compression.steps.back().held, label);
}

void add_yield(const LoadedScrew& loaded, const Findings& findings, MarginList& list) {
  const Metal& metal = loaded.screw->material;
  const std::string part = loaded.part("yield");
  if (!metal.yield_strength) {
    list.left_out.push_back(fmt::format("Part \"{}\": no yield strength of \"{}\" is known.", part, metal.name));
    return;
  }
  double least = std::numeric_limits<double>::infinity();
  std::size_t worst = 0;
  for (std::size_t l = 0; l < loaded.loads.size(); ++l)
    if (const auto& factor = loaded.loads[l]->factor_to_yield; factor && *factor < least) {
      least = *factor;
      worst = l;
    }
  const double yield = metal.yield_strength->value();
  const HeldForce* held = held_after_steps(findings, loaded.screw->label);
  if (held != nullptr && held->of_yield && *held->of_yield > 1.0 / least) {
    list.add({MarginKind::screw_yield, part, "after the last step", 1.0 / *held->of_yield,
              fmt::format("After the last step alone {} is pulled with {:.0f} N; its core yields at {:.0f} N.",
                          loaded.name(), held->axial.value(), held->axial.value() / *held->of_yield),
              "", metal.source},
             part);
    return;
  }
  list.add(
      {MarginKind::screw_yield, part, findings.loads[worst].load, least,
       fmt::format("Under \"{}\" the core of {} bears {:.0f} MPa (von Mises of axial force, bending and torsion) "
                   "where it is strained most; {} yields at {:.0f} MPa.",
                   findings.loads[worst].load, loaded.name(), yield / least, metal.name, yield),
       "", metal.source},
      fmt::format("Part \"{}\": nothing strains it.", part));
}

void add_fatigue(const Construct& construct, const LoadedScrew& loaded, const Findings& findings,
                 MarginList& list) {
  const Metal& metal = loaded.screw->material;
  const std::string part = loaded.part("fatigue");
  if (!metal.fatigue_strength) {
    list.left_out.push_back(fmt::format("Part \"{}\": no fatigue strength of \"{}\" is known.", part, metal.name));
    return;
  }
  const EnduranceBand band = endurance_of(metal, 1.0, thread_notch);
  std::vector<StressCycle> cycles;
  for (const auto* load : loaded.loads) cycles.push_back(load->head_cycle);
  const auto asked = asked_cycles(construct, cycles);
  if (asked.empty()) return;
  const std::string source = fmt::format(
      "{}; notch factor of cut threads in strong metal (rolled ones 3.0): machine-design textbooks, from memory",
      metal.fatigue_strength->source);
  const std::string assumed = fmt::format(
      "no corrosion or fretting (10 to 20 % is often taken off, from memory) and no spread of loads and activity, "
      "as the race "
      "has them; stress as on the first day; mean stress by Goodman; thread and head are taken as a notch that "
      "leaves 1 / "
      "{:g} of "
      "the strength at 10^7 cycles and all of it at 10^3",
      thread_notch);
  const std::string idle = fmt::format("Part \"{}\": no load strains it.", part);

  const FatigueFactor alone = worst_load_alone(band, asked);
  const StressCycle& cycle = cycles[alone.load];
  const Stress reversed = reversed_amplitude(cycle, *metal.ultimate_strength, metal.yield_strength);
  const std::string& load = findings.loads[alone.load].load;
  const Duty duty = *duty_of(construct, construct.loads[alone.load]);
  list.add(
      {MarginKind::screw_fatigue, part, load, alone.middle,
       fmt::format("Under \"{}\" nominal stress in the core of {}, where it leaves the head's seat, comes and "
                   "goes by {}, which tires like {:.0f} MPa fully reversed; with its notch {}.",
                   load, loaded.name(), cycle_text(cycle, metal), reversed.value(),
                   endurance_text(metal, band.middle, duty, alone)),
       assumed, source},
      idle);
  if (const auto together = all_loads_together(band, asked))
    list.add({MarginKind::screw_fatigue_of_all_loads, loaded.part("fatigue under all loads"),
              findings.loads[together->load].load, together->middle,
              together_text(construct, band, asked, *together, loaded.name()),
              fmt::format("{}; {}", together_assumed, assumed), source},
             idle);
}

Margin hold_margin(const LoadedScrew& loaded, const std::string& load, const ScrewHolding& holding, bool alone) {
  const Screw& screw = *loaded.screw;
  Margin margin{MarginKind::screw_hold,
                loaded.part("pull-out"),
                load,
                holding.factor,
                "",
                "",
                std::string(screw_holding_source),
                alone};
  margin.sentence = fmt::format(
      "Under \"{}\" {} is {} the bone with {:.0f} N of the {:.0f} N that its thread bears{}, and pressed sideways "
      "in its {} wall with {:.0f} N of {:.0f} N.",
      load, loaded.name(), holding.pull.value() < 0.0 ? "pushed into" : "pulled from",
      std::abs(holding.pull.value()), holding.pull_out.value(), is_tightened(screw) ? ", preload included" : "",
      holding.far ? "far" : "near", holding.shear.value(), holding.bearing.value());
  margin.assumed = fmt::format("both act together as on an ellipse{}",
                               alone ? "; the moment that its only wall takes is not counted" : "");
  return margin;
}

void add_hold(const LoadedScrew& loaded, const Findings& findings, MarginList& list) {
  std::vector<std::vector<CortexForce>> cortices;
  for (const auto* load : loaded.loads) cortices.push_back(load->cortices);
  const HeldForce* held = held_after_steps(findings, loaded.screw->label);
  const LeastHold least = least_hold(*loaded.screw, cortices, held);
  const std::string part = loaded.part("pull-out");
  if (!std::isfinite(least.factor))
    list.left_out.push_back(fmt::format("Part \"{}\": nothing pulls or presses it.", part));
  else if (least.load)
    list.margins.push_back(hold_margin(loaded, findings.loads[*least.load].load,
                                       *screw_holding(loaded.screw->size, cortices[*least.load]),
                                       least.indicative));
  else
    list.margins.push_back(
        {MarginKind::screw_hold, part, "after the last step", least.factor,
         fmt::format("After the last step alone {} is pulled from the bone with {:.0f} N of the {:.0f} N that "
                     "its thread bears.",
                     loaded.name(), held->axial.value(), held->axial.value() / *held->of_pull_out),
         "", std::string(screw_holding_source)});
}

}  // namespace

void add_screw_margins(const Construct& construct, const Findings& findings, MarginList& list) {
  for (const auto& loaded : loaded_screws(construct, findings)) {
    add_yield(loaded, findings, list);
    add_fatigue(construct, loaded, findings, list);
    add_hold(loaded, findings, list);
  }
}

}  // namespace gapstrain::models
