// What is uncertain in the race between bone and plate, and its value at any point of the unit cube.
#pragma once

#include "models/race/course_stress.h"
#include "models/race/race.h"

#include <Eigen/Core>

#include <array>
#include <vector>

namespace gapstrain::models {

enum class Uncertain {
  load_size,
  activity,
  strength,
  corrosion,
  stress_error,
  union_week,
  axial_part,  // of the loads, where the case has bands for them
  bending_part,
  torsion_part
};
inline constexpr std::array all_uncertain = {
    Uncertain::load_size,  Uncertain::activity,     Uncertain::strength,
    Uncertain::corrosion,  Uncertain::stress_error, Uncertain::union_week,
    Uncertain::axial_part, Uncertain::bending_part, Uncertain::torsion_part};

// Those that a race samples: parts of loads only where the history has them apart.
std::vector<Uncertain> uncertain_in(const StressHistory& history);

// One value a kind of `all_uncertain`, each in the open unit interval.
using RacePoint = Eigen::Matrix<double, static_cast<int>(all_uncertain.size()), 1>;

// With values of these kinds, in their order; what is not among them is not asked for.
RacePoint race_point(const std::vector<Uncertain>& kinds, const Eigen::VectorXd& values);

struct RaceSample {
  std::vector<double> load_factors;  // one a load of StressHistory::loads; all large or all small together
  double activity = 1.0;             // cycles over those of the loads
  Stress strength;                   // of the plate's metal, smooth bars at 10^7 cycles
  double corrosion = 1.0;            // what is left of it
  double stress = 1.0;               // true over computed
  double weeks_to_union = 0.0;
  double strength_probability = 0.5;  // that a metal's strength is less
  std::vector<PartFactors> parts{};   // one a load likewise; empty: as entered
};
LoadSize size_of(const RaceSample& sample, std::size_t load);

RaceSample race_sample(const StressHistory& history, const Construct& construct,
                       const RaceAssumptions& assumptions, const RacePoint& point);

// Of smooth bars at 10^7 cycles: triangular between the ends of what is published.
Stress strength_of(const FatigueStrength& strength, double probability);

// In the order of `uncertain_in`.
std::vector<RaceInput> race_inputs(const StressHistory& history, const Construct& construct,
                                   const RaceAssumptions& assumptions);

// 5th, 50th and 95th percentile. @pre not empty, all finite
Band band_of(const Eigen::VectorXd& outcomes);

}  // namespace gapstrain::models
