// Margins of one choice of screws after another on the same bodies, read off forces: no field is recovered, no
// sentence is written.
#pragma once

#include "models/margins/margins_fatigue.h"
#include "models/measures/outcome.h"

#include <optional>
#include <vector>

namespace gapstrain::models {

// A construct after its last step.
struct MadeConstruct {
  CarriedState state;
  Stress plate_peak;            // the largest that any of the steps locked in
  std::vector<HeldForce> held;  // of ball heads and clamps
};

class MarginMeter {
 public:
  // Of the assembly's construct with any of its screws; borrowed.
  explicit MarginMeter(const Assembly& assembly);

  // `chosen`: screws in place. @pre as many states and outcomes as loads, without margins
  MarginFactors measure(const std::vector<int>& chosen, const MadeConstruct& made,
                        const std::vector<CarriedState>& loaded, const std::vector<LoadOutcome>& outcomes) const;

 private:
  double fatigue(const Endurance& endurance, const std::vector<StressCycle>& one_a_load) const;

  const Assembly& assembly_;
  std::vector<double> cycles_;  // that each load is asked for; 0 outside the patient's day
  bool all_together_ = false;   // lives used add up over the day
  std::optional<Endurance> plate_;
  struct ScrewEndurance {
    Endurance at_head, in_bone;
  };
  std::vector<std::optional<ScrewEndurance>> screws_;  // of the assembly's
};

}  // namespace gapstrain::models
