// Fatigue damage of plate and screws over the weeks, for one sample of what is uncertain.
#pragma once

#include "models/race/course_stress.h"
#include "models/race/race_samples.h"

#include <Eigen/Core>

#include <optional>
#include <vector>

namespace gapstrain::models {

enum class Implant { plate, screws };

// Cycles over cycles to failure, added up at each place over all loads (A. Palmgren 1924, Z. VDI 68:339; M. A.
// Miner 1945, J. Appl. Mech. 12:A159). Between moments the logarithm of a load's damage a week is straight in
// time, as a reversed amplitude is that changes in equal ratios; its sum over time is then exact. After union
// everything stays as it is.
class ImplantDamage {
 public:
  ImplantDamage(const StressHistory& history, const CourseStress& stress, const Construct& construct,
                const RaceSample& sample);

  // At the place that is worst by then; 0 without such places. `week`: from 0 on, any part of a week.
  double at(Implant implant, double week) const;
  // That place, a position in StressHistory::places; nothing without such places.
  std::optional<std::size_t> worst_place(Implant implant, double week) const;
  // When it reaches 1; nothing when that is not within five years.
  std::optional<double> breaks(Implant implant) const;

 private:
  struct Places {
    Eigen::Index first, last;  // the one behind them
  };
  Places places_of(Implant implant) const;
  double at(Eigen::Index place, double week) const;

  // Of a load at a place (a column of `log_rate_`) from a moment to a week before the next one.
  double damage_from(Eigen::Index moment, Eigen::Index column, double week) const;

  Eigen::ArrayXd weeks_;      // of the moments
  Eigen::ArrayXXd log_rate_;  // damage a week, (moments x loads and places, those of a load together)
  Eigen::ArrayXXd damage_;    // until each moment (moments x places)
  Eigen::Index loads_ = 0, plate_places_ = 0;
  // Of each load, in which less comes; empty when the patient is not protected.
  struct SparedTime {
    double from, to, share;
  };
  std::vector<std::vector<SparedTime>> spared_;
};

}  // namespace gapstrain::models
