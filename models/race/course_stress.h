// Stress at the places followed in one course of healing, at loads of any size.
#pragma once

#include "models/race/stress_history.h"

#include <Eigen/Core>

#include <vector>

namespace gapstrain::models {

// The two load factors of a history that a load's size lies between, or the nearest two.
struct LoadBracket {
  std::size_t low, high;
};
LoadBracket bracket_of(const std::vector<double>& load_factors, double load_factor);

// How a load differs from what was entered.
struct LoadSize {
  double all = 1.0;                    // of all its parts
  PartFactors parts = all_as_entered;  // each over that
};

// The size of the load as entered that strains the gap as much on the first day.
double size_by_strain(const StressHistory& history, std::size_t load, const LoadSize& size);

class CourseStress {
 public:
  // What never heals stays at its first moment, unless screws soften.
  CourseStress(const StressHistory& history, const StressHistory::Course& course);

  const std::vector<double>& progress() const { return progress_; }  // of its moments
  std::size_t places() const { return places_; }

  // Between load factors the amplitude goes as a power of the load, the mean straight; below and above all of them
  // the amplitude is in proportion to the load, the mean goes straight on. One cycle a place.
  std::vector<StressCycle> at(std::size_t moment, std::size_t load, double load_factor) const;

  // Likewise of a load some of whose parts are larger or smaller: stress by `between` of its parts, the governed
  // gap as far healed as under loads that strain it as much.
  // @pre the history outlives this; it sampled the parts that are not as entered
  std::vector<StressCycle> at(std::size_t moment, std::size_t load, const LoadSize& size) const;

 private:
  const StressHistory& history_;
  const StressHistory::Course& course_;
  std::vector<double> progress_, factors_;
  std::size_t places_ = 0;
  // [moment][load], (places x load factors): logarithm of the amplitude, mean; MPa
  std::vector<std::vector<Eigen::ArrayXXd>> log_amplitudes_, means_;
};

}  // namespace gapstrain::models
