// Fatigue life of a metal under repeated stress.
#pragma once

#include "models/findings/findings.h"
#include "models/parts/material.h"

namespace gapstrain::models {

// Fully reversed amplitude over cycles, S = a N^b (O. H. Basquin 1910, Proc. ASTM 10:625): through 0.9 times the
// ultimate strength at 10^3 cycles (machine-design textbooks, from memory) and a fatigue strength at 10^7. It goes
// on falling beyond 10^7 cycles: a notched, fretted implant in the body is not trusted to have an endurance limit.
inline constexpr double last_tested_cycles = 1e7;  // longer lives are read off the line beyond its last point
struct FatigueLine {
  double a = 0.0;  // MPa
  double b = 0.0;  // negative
};

// `strength`: at 10^7 cycles, all that lowers it included. @pre 0 < strength < 0.9 ultimate
FatigueLine fatigue_line(Stress ultimate, Stress strength);

// Fully reversed amplitude that is borne for so many cycles.
Stress strength_at(const FatigueLine& line, double cycles);

// Infinite for no amplitude; 0 from the ultimate strength on would be beyond the line's meaning, so lives below 1
// cycle are given as 1.
double cycles_to_failure(const FatigueLine& line, Stress reversed_amplitude);

// Equivalent fully reversed amplitude: S_a / (1 - S_m / R_m), J. Goodman 1899, Mechanics Applied to
// Engineering (as in machine-design textbooks, from memory). A mean that presses counts as none. A mean that with
// the amplitude would pass the yield strength is what yielding once leaves of it, yield - amplitude. Infinite when
// the mean reaches the ultimate strength.
Stress reversed_amplitude(const StressCycle& cycle, Stress ultimate, std::optional<Stress> yield);

// What cycles of one metal are put in order by: that, or the amplitude where its strength is not known.
Stress ranked_amplitude(const StressCycle& cycle, const Metal& metal);

}  // namespace gapstrain::models
