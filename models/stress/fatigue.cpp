#include "models/stress/fatigue.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace gapstrain::models {

FatigueLine fatigue_line(Stress ultimate, Stress strength) {
  constexpr double first_cycles = 1e3;
  const double first = 0.9 * ultimate.value();
  FatigueLine line;
  line.b = std::log(strength.value() / first) / std::log(last_tested_cycles / first_cycles);
  line.a = first / std::pow(first_cycles, line.b);
  return line;
}

Stress strength_at(const FatigueLine& line, double cycles) { return line.a * std::pow(cycles, line.b) * mpa; }

double cycles_to_failure(const FatigueLine& line, Stress reversed_amplitude) {
  if (!(reversed_amplitude.value() > 0.0)) return std::numeric_limits<double>::infinity();
  return std::max(1.0, std::pow(reversed_amplitude.value() / line.a, 1.0 / line.b));
}

Stress reversed_amplitude(const StressCycle& cycle, Stress ultimate, std::optional<Stress> yield) {
  const Stress none = 0.0 * mpa;
  Stress mean = std::max(cycle.mean, none);
  if (yield) mean = std::min(mean, std::max(*yield - cycle.amplitude, none));
  if (mean >= ultimate) return std::numeric_limits<double>::infinity() * mpa;
  return cycle.amplitude / (1.0 - (mean / ultimate).value());
}

Stress ranked_amplitude(const StressCycle& cycle, const Metal& metal) {
  if (!metal.ultimate_strength) return cycle.amplitude;
  return reversed_amplitude(cycle, *metal.ultimate_strength, metal.yield_strength);
}

}  // namespace gapstrain::models
