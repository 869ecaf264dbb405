// The race between bone and plate: fatigue damage adds up week by week while the gap stiffens. Inputs are
// uncertain, so every figure is a band: 5th, 50th and 95th percentile over samples of the inputs. Who wins is said
// in words by models/words/race_words.h.
#pragma once

#include "models/race/stress_history.h"
#include "models/statistics/sobol_indices.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

inline constexpr std::uint64_t race_design_seed = 1;  // one set of samples for all constructs
inline constexpr double five_years = 260.0;           // weeks: beyond them no break is looked for

struct Band {
  double low = 0.0, middle = 0.0, high = 0.0;  // 5th, 50th, 95th percentile
};

// What the program takes where neither the case nor the catalogue says.
struct RaceAssumptions {
  // What corrosion fatigue and fretting at the screws' heads leave of the fatigue strength, any value between as
  // likely ("10 to 20 % less" is often taken; from memory, no source).
  double corrosion_from = 0.8, corrosion_to = 1.0;
  // Standard deviation of the true stress over this model's about 1: an estimate for the default mesh (no source;
  // tests/PROOF.md has what the model was found to be off by). At the rim of an empty hole the model is high by up
  // to 13 %, on the safe side, which is not taken off.
  double stress_error = 0.05;
  Eigen::Index base_points = 1024;  // of the Sobol' sequence; a power of two
};

// What is uncertain, in its own unit.
struct RaceInput {
  std::string name;  // "size of the loads"
  Band spread;
  std::string unit;  // "times nominal", "MPa", "weeks"
  std::string source;
  bool of_loads = false;  // how large they are: all together, or a part of them
};

// How much of the outcome's variance an input accounts for, alone and with others (Sobol' indices).
struct InputWeight {
  std::string input;
  IndexEstimate first, total;
};

// How it ends for an implant, over the samples.
struct RaceOutcome {
  std::vector<Band> damage;          // at the end of each of Race::weeks (Palmgren 1924, Miner 1945: 1 is failure)
  Band life_factor;                  // 1 / damage when union is due: how many times over it lasts until then
  double breaks_before_union = 0.0;  // share of the samples
  double breaks_in_five_years = 0.0;
  // When damage reaches 1; nothing for a percentile beyond five years.
  std::optional<double> breaks_low, breaks_middle, breaks_high;  // weeks
  // To which factor, and week, all loads together come no more often than metals are tested (last_tested_cycles,
  // at the middle of what was taken for the week of union): what lasts longer does so by a line without a test.
  std::optional<double> tested_factor, tested_weeks;
};

// The screw with the shortest fatigue life, at its head or where it enters bone, of all that are in.
struct ScrewRace : RaceOutcome {  // of the worst of each sample
  ScrewId screw = ScrewId::none;  // the one that is worst in most samples
  std::string label;              // its
};

struct RaceCourse : RaceOutcome {  // of the plate
  HealingCourse course = HealingCourse::steady;
  Band united;                      // share of the gap's area whose tissue is that of union when it is due
  std::optional<ScrewRace> screws;  // nothing when no screw's metal has fatigue strength
};

struct Race {
  std::vector<double> weeks;        // 0, 1, 2 and so on, to the latest week of union
  Band union_week;                  // when it is due
  std::vector<RaceCourse> courses;  // as in StressHistory
  std::vector<RaceInput> inputs;
  std::vector<InputWeight> hangs_on;  // of log life_factor of the governed course, the heaviest total first
  // Where parts of loads are sampled: the share of that variance that sizes of loads account for, each alone.
  std::optional<double> hangs_on_loads;
  GapState at_the_end;  // of the governed course, under the loads as entered
  RaceAssumptions assumptions;
  double cycles_a_day = 0.0;     // of all loads
  double protected_until = 0.0;  // week to which fewer come
  double activity_factor = 1.0;  // times or over which they may be more or fewer
  std::size_t samples = 0;       // over which the percentiles are taken
};
// @pre the race has that course
const RaceCourse& course_of(const Race& race, HealingCourse course);

Race run_race(const StressHistory& history, const Construct& construct, const RaceAssumptions& assumptions = {});

// Two constructs for one patient on the same samples: what they share cancels out.
struct RaceComparison {
  HealingCourse course = HealingCourse::governed;
  Band ratio;  // life factor of the first over that of the second, each of plate or screws, whichever breaks first
  bool with_screws = false;           // else of the plates alone: screws of one of them are not known
  double first_outlasts = 0.0;        // share of the samples
  std::vector<InputWeight> hangs_on;  // of log ratio
};
// One a course, as in StressHistory. Both share the loads' sizes, activity, corrosion, the week of union and, of
// one metal, the fatigue strength; the model's error is each one's own.
std::vector<RaceComparison> compare_races(const StressHistory& first, const Construct& first_construct,
                                          const StressHistory& second, const Construct& second_construct,
                                          const RaceAssumptions& assumptions = {});

}  // namespace gapstrain::models
