// What each part still has in hand: factors between what it bears and what it is asked, worst first.
#pragma once

#include "models/findings/findings.h"
#include "models/parts/construct.h"

#include <set>
#include <string>
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

struct Margin {
  MarginKind kind = MarginKind::plate_yield;
  std::string part;         // "plate, fatigue", "screw S4, pull-out", "bone at the screws"
  std::string load;         // under which it is least
  double factor = 0.0;      // strength over demand: below 1 it fails; of fatigue on the load, at the cycles asked
  std::string sentence;     // place, stress or force with unit, limit
  std::string assumed;      // notch, finish, cycles and so on, in words; empty where nothing is
  std::string source;       // of the limit
  bool indicative = false;  // the model does not see its place well enough to trust the figure
};

// Worst first, one a part and kind. Factors are finite; parts without one are told by margins_left_out.
//
// Cycles: a load with cycles_per_day is asked for so many until the latest week of union. Where no load has them,
// or without [healing], each is asked for 10^6 (the run-out of ASTM F382's fatigue test, from memory). Where some
// have them, the others are no part of the patient's day and are not asked for any. Stress stays that of the first
// day: what healing takes over is for race.h.
// @pre the findings are the construct's: a load each, in its order.
std::vector<Margin> find_margins(const Construct& construct, const Findings& findings);

// Those that fail, for sure: below 1 and not indicative.
std::vector<Margin> failing(const std::vector<Margin>& margins);

// The first that is not indicative; null without one. @pre the margins are worst first
const Margin* least_margin(const std::vector<Margin>& margins);
// The same, of these kinds only.
const Margin* least_margin(const std::vector<Margin>& margins, const std::set<MarginKind>& kinds);

// The worst part of each kind, worst first; fatigue under one load and under all is one kind. @pre the margins are
// worst first
std::vector<Margin> worst_of_each_kind(const std::vector<Margin>& margins);

// Why parts and kinds have no margin, a sentence each: data that is not known, or nothing that strains them.
std::vector<std::string> margins_left_out(const Construct& construct, const Findings& findings);

}  // namespace gapstrain::models
