// A construct while its fracture heals: tissue in the gap stiffens, the plate is spared.
#pragma once

#include "models/assembly/prepared_bodies.h"
#include "models/findings/findings.h"
#include "models/parts/construct.h"
#include "models/race/part_stress.h"

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

enum class HealingCourse {
  steady,    // the tissue stiffens all over, in equal ratios of time
  governed,  // at each spot of the gap it goes on only while the next tissue bears the strain along the bone there
  none       // it stays what it was on the first day
};

// Shares of the gap's area by what L. E. Claes and C. A. Heigele 1999 (J. Biomech. 32:255, limits from memory)
// expect: bone straight away below 5 % strain and 0.15 MPa of pressure, bone by way of cartilage below 15 % under
// more pressure, fibrous tissue else; and the rest that stays closed. Strain is that along the bone, pressure that
// of a confined column of tissue.
struct ClaesWindows {
  double membranous = 0.0, endochondral = 0.0, fibrous = 0.0, closed = 0.0;
};

// The gap at a moment, each spot under the load that strains it most of those that come every day.
struct GapState {
  Stress modulus;     // of its tissue, geometric mean over the area
  Stress plate_peak;  // largest von Mises stress of the places followed, under any load
  double largest_strain = 0.0, largest_shear = 0.0;  // along and across the bone, magnitude
  PerrenWindows perren;
  ClaesWindows claes;
  double united = 0.0;  // share of the area whose tissue is that of union
  double held = 0.0;    // share that is strained more than its next tissue bears
};

// A place that is followed: of the plate, or the core of a screw where it leaves its head's seat, or where it
// enters or leaves a cortex.
struct HotPlace {
  Length along, across;  // on the plate
  PlateFace face = PlateFace::top;
  std::optional<int> hole;
  std::optional<std::size_t> screw = std::nullopt;  // position in Construct::screws; all above is then left out
  double notch = 1.0;  // that the stress has not in it: of the strength at 10^7 cycles
};

// Stress at the places followed, over time on the way to union (0 to 1), load size and load. Larger loads hold the
// governed course up more: each load factor heals in its own way.
struct StressHistory {
  std::vector<double> progress;  // rising, 0 first, 1 last
  // Local stiffness of screws in bone at each moment, where the case has a course of it: of the week that the
  // moment is in when union comes in the middle of its weeks. Empty: it stays.
  std::vector<double> interfaces{};
  std::vector<double> load_factors;  // rising, 1 among them: of the loads' sizes as entered
  std::vector<std::size_t> loads;    // positions in Construct::loads of those with cycles_per_day
  std::vector<HotPlace> places;      // of the plate first
  struct Course {
    HealingCourse course = HealingCourse::steady;
    std::vector<GapState> gap;   // one a moment, at load factor 1
    std::vector<double> united;  // share of the area at the last moment, one a load factor
    // [moment][load factor][load][place]; nominal at screws
    std::vector<std::vector<std::vector<std::vector<StressCycle>>>> cycles;
    // [moment][load factor][load], where parts of loads have bands
    std::vector<std::vector<std::vector<PartStates>>> parts{};
  };
  std::vector<Course> courses;  // steady, governed, none

  // Of loads whose parts have bands; else empty.
  std::vector<LoadPart> sampled_parts;         // whose band is open in any of `loads`
  std::vector<std::array<PartBand, 3>> bands;  // one a load, by index_of(part)
  PlaceForces at_rest;                         // at all places
  std::vector<CoreSection> cores;              // of those with a screw, in their order
  // The gap's largest strain along the bone on the first day over that under the loads as entered: loads heal the
  // governed gap as those do that strain it as much.
  PartRatios strain;
};

// @pre the construct has [healing], a load with cycles_per_day, an open gap, and a metal with fatigue strength;
// the bodies were made for it (and its screws).
// @throw ModelError
StressHistory follow_healing(const std::shared_ptr<const PreparedBodies>& prepared, const Construct& construct,
                             const std::function<void(const std::string&)>& progress = {});

// Why bone and plate are not raced; in words, with what to enter, by models/words/race_words.h.
struct NoRace {
  enum class Reason {
    no_healing,         // no [healing]
    no_daily_cycles,    // no load has cycles_per_day
    no_gap,             // in which tissue could stiffen
    filled_by_step,     // tissue of a later week is in the gap already
    unknown_strength,   // ultimate or fatigue strength of the plate's metal
    not_asked,          // whoever assesses it left it out
    without_an_answer,  // under a load larger than those entered
  };
  Reason reason = Reason::no_healing;
  std::string metal{};  // unknown_strength
  std::string error{};  // without_an_answer: what stopped the calculation
};

// Why a construct's race cannot be run; nothing when it can.
std::optional<NoRace> why_no_race(const Construct& construct);

}  // namespace gapstrain::models
