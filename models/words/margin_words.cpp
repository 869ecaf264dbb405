#include "models/words/margin_words.h"

#include "models/margins/margins_fatigue.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>

namespace gapstrain::models {

namespace {

constexpr std::string_view shell_reads_high = "a shell reads up to 13 % high at a thick plate's rims";

// "the plate", "S4 (hole 4)"
std::string subject_of(const Screw* screw) {
  if (screw == nullptr) return "the plate";
  return screw->hole > 0 ? fmt::format("{} (hole {})", screw->label, screw->hole)
                         : fmt::format("{} (beside the plate)", screw->label);
}

std::string location_text(const PlateLocation& location) {
  const char* level = location.face == PlateFace::top      ? "top face"
                      : location.face == PlateFace::bottom ? "bottom face"
                                                           : "middle of the wall";
  return location.hole ? fmt::format("at the rim of hole {}, {}", *location.hole, level)
                       : fmt::format("{:.0f} mm from its proximal end, {}", location.along.value(), level);
}

// Lines of weak metal fall faster, so that for few cycles the lower strength may allow more.
std::string times_as_large(const FactorRange& range) {
  const auto [least, most] = std::minmax({range.low, range.middle, range.high});
  return fmt::format("{:.3g} times as large ({:.2g} to {:.2g} over the metal's published strengths)", range.middle,
                     least, most);
}

std::string cycle_text(const StressCycle& cycle, const Metal& metal) {
  std::string left;
  if (metal.yield_strength && cycle.mean + cycle.amplitude > *metal.yield_strength)
    left = fmt::format(" (yielding leaves {:.0f} MPa)",
                       std::max(metal.yield_strength->value() - cycle.amplitude.value(), 0.0));
  return fmt::format("stress amplitude {:.0f} MPa, mean stress {:.0f} MPa{}", cycle.amplitude.value(),
                     cycle.mean.value(), left);
}

std::string life_used(double damage) {
  return damage < 1e-4  ? "less than 0.01 % of"
         : damage < 1.0 ? fmt::format("{:.2g} % of", 100.0 * damage)
         : damage < 1e3 ? fmt::format("{:.2g} times", damage)
                        : std::string("more than a thousand times");
}

std::string estimate_beyond_tests(double cycles) {
  return cycles > last_tested_cycles ? fmt::format(
                                           " This is an ESTIMATE: {:.2g} cycles are more than the 10^7 that "
                                           "metals are tested to.",
                                           cycles)
                                     : "";
}

// Of a day's loads until the latest week of union.
double all_cycles(const Construct& construct) {
  double cycles = 0.0;
  for (const auto& load : construct.loads)
    if (const auto duty = duty_of(construct, load)) cycles += duty->cycles;
  return cycles;
}

struct Sentence {
  const Construct& construct;
  const Margin& margin;
  const Screw* screw;

  const Metal& metal() const { return screw != nullptr ? screw->material : only(construct.plates).material; }

  std::string operator()(const std::monostate&) const { return ""; }

  std::string operator()(const YieldBasis& basis) const {
    const std::string limit = fmt::format("{} yields at {:.0f} MPa", metal().name, basis.yield.value());
    if (screw != nullptr)
      return fmt::format(
          "Under \"{}\" the core of {} bears {:.0f} MPa (von Mises of axial force, bending and "
          "torsion) where it is strained most; {}.",
          margin.load, subject_of(screw), basis.stress.value(), limit);
    if (!basis.location)
      return fmt::format("In the steps alone the plate bears {:.0f} MPa (von Mises); {}.", basis.stress.value(),
                         limit);
    return fmt::format("Under \"{}\" the plate bears {:.0f} MPa (von Mises) {}; {}.", margin.load,
                       basis.stress.value(), location_text(*basis.location), limit);
  }

  std::string operator()(const PreloadBasis& basis) const {
    if (margin.kind == MarginKind::screw_hold)
      return fmt::format(
          "After the last step alone {} is pulled from the bone with {:.0f} N of the {:.0f} N that "
          "its thread bears.",
          subject_of(screw), basis.axial.value(), basis.limit.value());
    return fmt::format("After the last step alone {} is pulled with {:.0f} N; its core yields at {:.0f} N.",
                       subject_of(screw), basis.axial.value(), basis.limit.value());
  }

  std::string operator()(const FatigueBasis& basis) const {
    const std::string place =
        screw != nullptr ? fmt::format("Nominal in the core of {}, where it {}", subject_of(screw),
                                       basis.notch.in_bone ? "enters or leaves bone" : "leaves the head's seat")
                         : fmt::format("In the plate {}", basis.location ? location_text(*basis.location) : "");
    const LoadCase& load = *std::find_if(construct.loads.begin(), construct.loads.end(),
                                         [&](const LoadCase& one) { return one.name == margin.load; });
    return fmt::format(
        "{}, under \"{}\": {}; equivalent fully reversed amplitude {:.0f} MPa. {}{} bears {:.0f} MPa for {}; the "
        "load could be {}.{}",
        place, margin.load, cycle_text(basis.cycle, metal()), basis.reversed.value(),
        screw != nullptr ? fmt::format("With its notch of {:.2g} ", basis.notch.factor) : "", metal().name,
        basis.strength.value(), duty_of(construct, load)->text, times_as_large(basis.range),
        estimate_beyond_tests(basis.cycles));
  }

  std::string operator()(const DamageBasis& basis) const {
    return fmt::format(
        "As long as the gap stays as on the first day, all loads of the day use in {:g} weeks {} the life of {}, "
        "\"{}\" most of it; they could be {}.{}",
        basis.weeks, life_used(basis.damage), subject_of(screw), margin.load, times_as_large(basis.range),
        estimate_beyond_tests(all_cycles(construct)));
  }

  std::string operator()(const HoldBasis& basis) const {
    return fmt::format(
        "Under \"{}\" {} is {} the bone with {:.0f} N of the {:.0f} N that its thread bears{}, and pressed "
        "sideways in its {} wall with {:.0f} N of {:.0f} N.",
        margin.load, subject_of(screw), basis.pull.value() < 0.0 ? "pushed into" : "pulled from",
        std::abs(basis.pull.value()), basis.pull_out.value(), is_tightened(*screw) ? ", preload included" : "",
        basis.far ? "far" : "near", basis.shear.value(), basis.bearing.value());
  }

  std::string operator()(const StrainBasis& basis) const {
    const CorticalBone& cortex = construct.bone.cortex;
    const std::string yield = cortex.yield_strain
                                  ? fmt::format("{} yields at {:.2g} %", cortex.name, 100 * basis.yield)
                                  : fmt::format("no yield strain of {} is known, human-femur yields at {:.2g} %",
                                                cortex.name, 100 * basis.yield);
    return fmt::format("Under \"{}\" the bone is strained by up to {:.2g} % {}; {} in tension along its axis.",
                       margin.load, 100 * basis.strain,
                       margin.kind == MarginKind::bone_yield_at_screws ? "within a core's width of a screw"
                                                                       : "clear of the screws",
                       yield);
  }
};

// Of a screw; null of the plate.
const NotchBasis* notch_of(const Margin& margin) {
  if (margin.screw == ScrewId::none) return nullptr;
  if (const auto* fatigue = std::get_if<FatigueBasis>(&margin.basis)) return &fatigue->notch;
  const auto* damage = std::get_if<DamageBasis>(&margin.basis);
  return damage != nullptr ? &damage->notch : nullptr;
}

std::string fatigue_assumptions(const Construct& construct, const NotchBasis* of_screw) {
  std::string common =
      "no corrosion or fretting (10 to 20 % is often taken off, from memory) and no spread of loads and activity, "
      "as the race has them; stress as on the first day; mean stress by Goodman; ";
  if (of_screw != nullptr)
    return common +
           fmt::format("{} as a notch that leaves 1 / {:.2g} of the strength at 10^7 cycles and all of it at 10^3",
                       of_screw->in_bone ? "the thread's root is taken"
                                         : "fillet, thread and first locking thread at the head are taken",
                       of_screw->factor);
  return common + fmt::format(
                      "the holes' notches count in full; {}; the surface leaves {:.0f} % of the strength of "
                      "smooth bars",
                      shell_reads_high, 100.0 * only(construct.plates).finish_factor);
}

// How the list of what has no margin names it: "Plate, yield", "Part "screw S4, yield"".
std::string left_out_name(MarginKind kind, const std::string& label) {
  std::string part = part_name(kind, label);
  const bool of_plate = kind == MarginKind::plate_yield || kind == MarginKind::plate_fatigue ||
                        kind == MarginKind::plate_fatigue_of_all_loads;
  if (!of_plate) return fmt::format("Part \"{}\"", part);
  part.front() = 'P';
  return part;
}

struct LeftOutSentence {
  std::string operator()(const LoadOutsideDay& outside) const {
    return fmt::format(
        "Fatigue under \"{}\": it has no cycles_per_day while other loads have, so it is no part of the patient's "
        "day.",
        outside.load);
  }

  std::string operator()(const UnknownStrength& unknown) const {
    if (unknown.kind == MarginKind::bone_yield)
      return fmt::format("Bone: no yield strain of \"{}\" is known; give yield_strain.", unknown.material);
    return fmt::format(
        "{}: no {} strength of \"{}\" is known{}.", left_out_name(unknown.kind, unknown.label),
        is_fatigue(unknown.kind) ? "fatigue" : "yield", unknown.material,
        unknown.kind == MarginKind::plate_fatigue ? "; give ultimate_strength and fatigue_strength" : "");
  }

  std::string operator()(const NotStrained& idle) const {
    const bool is_bone = idle.kind == MarginKind::bone_yield || idle.kind == MarginKind::bone_yield_at_screws;
    return fmt::format("{}: {}.", left_out_name(idle.kind, idle.label),
                       is_fatigue(idle.kind)                 ? "no load strains it"
                       : idle.kind == MarginKind::screw_hold ? "nothing pulls or presses it"
                       : is_bone                             ? "no strain was found there"
                                                             : "nothing strains it");
  }
};

}  // namespace

std::string left_out_sentence(const LeftOutMargin& left_out) { return std::visit(LeftOutSentence{}, left_out); }

std::string margin_sentence(const Construct& construct, const Margin& margin) {
  return std::visit(Sentence{construct, margin, find_screw(construct.screws, margin.screw)}, margin.basis);
}

std::string margin_assumptions(const Construct& construct, const Margin& margin) {
  switch (margin.kind) {
    case MarginKind::plate_yield: {
      const auto* basis = std::get_if<YieldBasis>(&margin.basis);
      return basis != nullptr && basis->location ? std::string(shell_reads_high) : "";
    }
    case MarginKind::plate_fatigue:
    case MarginKind::screw_fatigue:
      return fatigue_assumptions(construct, notch_of(margin));
    case MarginKind::plate_fatigue_of_all_loads:
    case MarginKind::screw_fatigue_of_all_loads:
      return "lives used add up (Palmgren, Miner), each load at its worst place as if these were one; " +
             fatigue_assumptions(construct, notch_of(margin));
    case MarginKind::screw_hold:
      if (!std::holds_alternative<HoldBasis>(margin.basis)) return "";
      return margin.indicative
                 ? "both act together as on an ellipse; the moment that its only wall takes is not counted"
                 : "both act together as on an ellipse";
    case MarginKind::bone_yield_at_screws:
      return "the thread's surroundings are not modelled, so the figure is a hint";
    case MarginKind::screw_yield:
    case MarginKind::bone_yield:
      break;
  }
  return "";
}

}  // namespace gapstrain::models
