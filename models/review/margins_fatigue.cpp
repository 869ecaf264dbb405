#include "models/review/margins_fatigue.h"

#include <fmt/format.h>
#include <boost/math/tools/roots.hpp>

#include <algorithm>
#include <cmath>
#include <limits>

namespace gapstrain::models {

namespace {

// Lines of weak metal fall faster, so that for few cycles the lower strength may allow more.
std::string times_as_large(const FatigueFactor& factor) {
  const auto [least, most] = std::minmax({factor.low, factor.middle, factor.high});
  return fmt::format("{:.3g} times as large ({:.2g} to {:.2g} over the metal's published strengths)",
                     factor.middle, least, most);
}

}  // namespace

StressCycle with_larger_load(const StressCycle& cycle, double factor) {
  return {factor * cycle.amplitude, cycle.at_rest + factor * (cycle.mean - cycle.at_rest), cycle.at_rest};
}

double fatigue_damage(const Endurance& endurance, const std::vector<RepeatedCycle>& cycles, double factor) {
  double damage = 0.0;
  for (const auto& repeated : cycles) {
    const StressCycle cycle = with_larger_load(repeated.cycle, factor);
    const Stress reversed = reversed_amplitude(cycle, endurance.ultimate, endurance.yield);
    damage += repeated.cycles / cycles_to_failure(endurance.line, reversed);
  }
  return damage;
}

double fatigue_load_factor(const Endurance& endurance, const std::vector<RepeatedCycle>& cycles) {
  constexpr double widest = 1e6;
  if (fatigue_damage(endurance, cycles, widest) < 1.0) return std::numeric_limits<double>::infinity();
  if (fatigue_damage(endurance, cycles, 1.0 / widest) > 1.0) return 0.0;
  const auto excess = [&](double log_factor) {
    return fatigue_damage(endurance, cycles, std::exp(log_factor)) - 1.0;
  };
  const auto [low, high] = boost::math::tools::bisect(excess, -std::log(widest), std::log(widest),
                                                      boost::math::tools::eps_tolerance<double>(40));
  return std::exp(0.5 * (low + high));
}

std::optional<Duty> duty_of(const Construct& construct, const LoadCase& load) {
  constexpr double days_a_week = 7.0, run_out = 1e6;
  const bool is_day_known =
      construct.healing && std::any_of(construct.loads.begin(), construct.loads.end(),
                                       [](const LoadCase& other) { return other.cycles_per_day.has_value(); });
  if (!is_day_known)
    return Duty{run_out, false, "10^6 cycles, a test's run-out, as the cycles until union are not known"};
  if (!load.cycles_per_day) return std::nullopt;
  const double weeks = construct.healing->weeks_to;
  return Duty{*load.cycles_per_day * days_a_week * weeks, true,
              fmt::format("{:.0f} cycles, {:g} a day for {:g} weeks", *load.cycles_per_day * days_a_week * weeks,
                          *load.cycles_per_day, weeks)};
}

EnduranceBand endurance_of(const Metal& metal, double finish, double notch) {
  const auto with = [&](Stress strength) {
    return Endurance{fatigue_line(*metal.ultimate_strength, finish / notch * strength), *metal.ultimate_strength,
                     metal.yield_strength};
  };
  const FatigueStrength& strength = *metal.fatigue_strength;
  return {with(strength.low), with(strength.middle), with(strength.high)};
}

std::vector<AskedCycle> asked_cycles(const Construct& construct, const std::vector<StressCycle>& one_a_load) {
  std::vector<AskedCycle> asked;
  for (std::size_t l = 0; l < one_a_load.size(); ++l)
    if (const auto duty = duty_of(construct, construct.loads[l])) asked.push_back({l, one_a_load[l], *duty});
  return asked;
}

FatigueFactor worst_load_alone(const EnduranceBand& band, const std::vector<AskedCycle>& asked) {
  FatigueFactor worst;
  for (const auto& one : asked) {
    const std::vector<RepeatedCycle> cycles{{one.cycle, one.duty.cycles}};
    const double middle = fatigue_load_factor(band.middle, cycles);
    if (&one != &asked.front() && !(middle < worst.middle)) continue;
    worst = {one.load, fatigue_load_factor(band.low, cycles), middle, fatigue_load_factor(band.high, cycles)};
  }
  return worst;
}

std::optional<FatigueFactor> all_loads_together(const EnduranceBand& band, const std::vector<AskedCycle>& asked) {
  if (asked.size() < 2 || !asked.front().duty.is_daily) return std::nullopt;
  std::vector<RepeatedCycle> cycles;
  for (const auto& one : asked) cycles.push_back({one.cycle, one.duty.cycles});
  const auto used = [&](const AskedCycle& one) {
    return fatigue_damage(band.middle, {{one.cycle, one.duty.cycles}});
  };
  const auto most =
      std::max_element(asked.begin(), asked.end(),
                       [&](const AskedCycle& one, const AskedCycle& other) { return used(one) < used(other); });
  return FatigueFactor{most->load, fatigue_load_factor(band.low, cycles), fatigue_load_factor(band.middle, cycles),
                       fatigue_load_factor(band.high, cycles)};
}

std::string cycle_text(const StressCycle& cycle, const Metal& metal) {
  std::string left;
  if (metal.yield_strength && cycle.mean + cycle.amplitude > *metal.yield_strength)
    left = fmt::format(" (yielding leaves {:.0f} MPa)",
                       std::max(metal.yield_strength->value() - cycle.amplitude.value(), 0.0));
  return fmt::format("{:.0f} MPa either side of a mean of {:.0f} MPa{}", cycle.amplitude.value(),
                     cycle.mean.value(), left);
}

std::string endurance_text(const Metal& metal, const Endurance& middle, const Duty& duty,
                           const FatigueFactor& factor) {
  return fmt::format("{} bears {:.0f} MPa for {}; the load could be {}", metal.name,
                     middle.line.a * std::pow(duty.cycles, middle.line.b), duty.text, times_as_large(factor));
}

std::string together_text(const Construct& construct, const EnduranceBand& band,
                          const std::vector<AskedCycle>& asked, const FatigueFactor& factor,
                          std::string_view part) {
  std::vector<RepeatedCycle> cycles;
  for (const auto& one : asked) cycles.push_back({one.cycle, one.duty.cycles});
  const double damage = fatigue_damage(band.middle, cycles);
  const std::string used = damage < 1e-4  ? "less than 0.01 % of"
                           : damage < 1.0 ? fmt::format("{:.2g} % of", 100.0 * damage)
                           : damage < 1e3 ? fmt::format("{:.2g} times", damage)
                                          : std::string("more than a thousand times");
  return fmt::format(
      "As long as the gap stays as on the first day, all loads of the day use in {:g} weeks {} the life of {}, "
      "\"{}\" "
      "most of it; they could be {}.",
      construct.healing->weeks_to, used, part, construct.loads[factor.load].name, times_as_large(factor));
}

}  // namespace gapstrain::models
