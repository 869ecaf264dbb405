// How much larger the loads could be for a metal to live so many cycles.
#pragma once

#include "models/findings/findings.h"
#include "models/margins/margins.h"
#include "models/parts/construct.h"
#include "models/stress/fatigue.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

// What a metal bears at a place.
struct Endurance {
  FatigueLine line;  // finish and notch included
  Stress ultimate;
  std::optional<Stress> yield;
};

struct RepeatedCycle {
  StressCycle cycle;
  double cycles = 0.0;
};

// The cycle with the load larger by a factor, what the steps locked in staying. Exact while nothing opens or
// closes.
StressCycle with_larger_load(const StressCycle& cycle, double factor);

// Shares of life used, added up: failure at 1 (A. Palmgren 1924, Z. VDI 68:339; M. A. Miner 1945, J. Appl. Mech.
// 12:A159).
double fatigue_damage(const Endurance& endurance, const std::vector<RepeatedCycle>& cycles, double factor = 1.0);

// Factor on the loads at which the damage is 1, all of them growing together; of one load in closed form. Infinite
// without stress amplitude, 0 where what is locked in is too much for any load.
double fatigue_load_factor(const Endurance& endurance, const std::vector<RepeatedCycle>& cycles);

// The least of each load alone and, with `together`, of all of them. Infinite without a load.
double least_fatigue_factor(const Endurance& endurance, const std::vector<RepeatedCycle>& cycles, bool together);

// Cycles that a load is asked for, and in words where they come from; nothing for a load outside the patient's
// day.
struct Duty {
  double cycles = 0.0;
  bool is_daily = false;  // the load has cycles of its own, so that lives used add up over the day
  std::string text;
};
std::optional<Duty> duty_of(const Construct& construct, const LoadCase& load);

// A metal at the low, middle and high end of its published fatigue strength. The notch of a nominal stress divides
// the strength at 10^7 cycles and leaves the one at 10^3, where ductile metal evens notches out (machine-design
// textbooks, from memory). @pre it has one
struct EnduranceBand {
  Endurance low, middle, high;
};
EnduranceBand endurance_of(const Metal& metal, double finish, double notch);

// What a part is asked for by each load of the day, in the order of the loads.
struct AskedCycle {
  std::size_t load = 0;
  StressCycle cycle;
  Duty duty;
};
std::vector<AskedCycle> asked_cycles(const Construct& construct, const std::vector<StressCycle>& one_a_load);
std::vector<RepeatedCycle> repeated_cycles(const std::vector<AskedCycle>& asked);

// Factors on the loads, the middle one for margins.
struct FatigueFactor {
  std::size_t load = 0;  // alone, or that of all which uses most of the life
  FactorRange range;
};
// The load under which the part lives least. @pre there is one
FatigueFactor worst_load_alone(const EnduranceBand& band, const std::vector<AskedCycle>& asked);
// Of all loads together, each at its own worst place as if these were one: on the safe side. Nothing unless
// several loads have cycles of their own.
std::optional<FatigueFactor> all_loads_together(const EnduranceBand& band, const std::vector<AskedCycle>& asked);

}  // namespace gapstrain::models
