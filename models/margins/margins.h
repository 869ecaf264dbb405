// What each part still has in hand: factors between what it bears and what it is asked, worst first.
#pragma once

#include "models/findings/findings.h"
#include "models/parts/construct.h"

#include <optional>
#include <set>
#include <string>
#include <variant>
#include <vector>

namespace gapstrain::models {

// How a part may fail.
enum class MarginKind {
  plate_yield,
  plate_fatigue,
  plate_fatigue_of_all_loads,
  screw_yield,
  screw_fatigue,
  screw_fatigue_of_all_loads,
  screw_hold,
  bone_yield,
  bone_yield_at_screws
};

// What a factor is worked from, as values; words are made of them last (models/words/margin_words.h).

// On the plate. Nothing of it is known of what the steps alone did.
struct PlateLocation {
  std::optional<int> hole;  // 1-based, on its rim
  Length along;             // from the plate's proximal end
  PlateFace face = PlateFace::top;
};

struct YieldBasis {
  Stress stress, yield;                   // von Mises
  std::optional<PlateLocation> location;  // the plate's
};

// A tightened screw after the last step alone.
struct PreloadBasis {
  Force axial, limit;  // its core's yield, or its thread's pull-out
};

// A factor at the low, middle and high end of a metal's published fatigue strength.
struct FactorRange {
  double low = 0.0, middle = 0.0, high = 0.0;
};

// What a notch that the stress does not have in it divides the strength at 10^7 cycles by, and a screw's place.
struct NotchBasis {
  double factor = 1.0;
  bool in_bone = false;  // where the thread enters or leaves a cortex; else where the core leaves its head's seat
};

struct FatigueBasis {
  StressCycle cycle;
  Stress reversed;  // equivalent fully reversed amplitude (see models/stress/fatigue.h)
  Stress strength;  // amplitude that the metal bears fully reversed for so many cycles, notch and finish included
  double cycles = 0.0;
  FactorRange range;
  std::optional<PlateLocation> location;  // the plate's
  NotchBasis notch{};
};

struct DamageBasis {
  double damage = 0.0;  // share of life used by all loads of the day (Palmgren, Miner)
  double weeks = 0.0;
  FactorRange range;
  NotchBasis notch{};
};

struct HoldBasis {
  Force pull;  // negative pushes it in
  Force pull_out, shear, bearing;
  bool far = false;  // the wall pressed hardest
};

struct StrainBasis {
  double strain = 0.0, yield = 0.0;
};

using MarginBasis =
    std::variant<std::monostate, YieldBasis, PreloadBasis, FatigueBasis, DamageBasis, HoldBasis, StrainBasis>;

struct Margin {
  MarginKind kind = MarginKind::plate_yield;
  std::string load;         // under which it is least
  double factor = 0.0;      // strength over demand: below 1 it fails; of fatigue on the load, at the cycles asked
  std::string source;       // of the limit
  bool indicative = false;  // the model does not see its place well enough to trust the figure
  ScrewId screw = ScrewId::none;  // none: of plate or bone
  MarginBasis basis{};
  std::string label{};  // the screw's
};

// Why a part or kind has no margin, as values.

// A load is no part of the patient's day while others are: nobody asks for fatigue under it.
struct LoadOutsideDay {
  std::string load;
};

// A strength without which a kind has no margin is not known of this metal or bone.
struct UnknownStrength {
  MarginKind kind = MarginKind::plate_yield;
  std::string material;
  ScrewId screw = ScrewId::none;  // none: of plate or bone
  std::string label{};            // the screw's
};

// Nothing strains the part in this way.
struct NotStrained {
  MarginKind kind = MarginKind::plate_yield;
  ScrewId screw = ScrewId::none;  // none: of plate or bone
  std::string label{};            // the screw's
};

using LeftOutMargin = std::variant<LoadOutsideDay, UnknownStrength, NotStrained>;

struct CollectedMargins {
  std::vector<Margin> margins;  // worst first, one a part and kind; factors are finite
  std::vector<LeftOutMargin> left_out;
};

// Cycles: a load with cycles_per_day is asked for so many until the latest week of union. Where no load has them,
// or without [healing], each is asked for 10^6 (the run-out of ASTM F382's fatigue test, from memory). Where some
// have them, the others are no part of the patient's day and are not asked for any. Stress stays that of the first
// day: what healing takes over is for race.h.
// @pre the findings are the construct's: a load each, in its order.
// @throw ModelError for screws that are not numbered
CollectedMargins collect_margins(const Construct& construct, const Findings& findings);

// Those that fail, for sure: below 1 and not indicative.
std::vector<Margin> failing(const std::vector<Margin>& margins);

// The least that is not indicative, the first of equals; null without one.
const Margin* least_margin(const std::vector<Margin>& margins);
// The same, of these kinds only.
const Margin* least_margin(const std::vector<Margin>& margins, const std::set<MarginKind>& kinds);

// Fatigue, under one load or all.
bool is_fatigue(MarginKind kind);
// Of all loads of a day, rather than of the one that is named.
bool is_of_all_loads(MarginKind kind);

// The worst part of each kind, worst first; fatigue under one load and under all is one kind. @pre the margins are
// worst first
std::vector<Margin> worst_of_each_kind(const std::vector<Margin>& margins);

}  // namespace gapstrain::models
