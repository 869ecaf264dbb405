#include "models/margins/margins_fatigue.h"

#include <fmt/format.h>
#include <boost/math/tools/roots.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>

namespace gapstrain::models {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

// Factor at which a load alone uses up the life, where the equivalent amplitude reaches S, what it bears for so
// many cycles. With the load's factor f, amplitude f A and mean m = r + f d, tension only and what yielding leaves
// of it: f A / (1 - min(max(m, 0), max(Y - f A, 0)) / R) = S. Each branch rises with f, so the greater mean
// reaches S first and the lesser of two bounds on the mean last.
double factor_alone(const Endurance& endurance, const RepeatedCycle& repeated) {
  constexpr double widest = 1e6;
  const double amplitude = repeated.cycle.amplitude.value();
  if (!(amplitude > 0.0) || !(repeated.cycles >= 1.0)) return infinity;
  const double ultimate = endurance.ultimate.value(), at_rest = repeated.cycle.at_rest.value();
  const double from_load = repeated.cycle.mean.value() - at_rest;
  const double borne = strength_at(endurance.line, repeated.cycles).value();
  const auto reached = [](double strength, double rise) {
    if (strength <= 0.0) return 0.0;
    return rise > 0.0 ? strength / rise : infinity;
  };
  const double without_mean = borne / amplitude;
  const double with_mean = reached(borne * (1.0 - at_rest / ultimate), amplitude + borne * from_load / ultimate);
  double factor = std::min(without_mean, with_mean);
  if (endurance.yield) {
    const double yielding =
        reached(borne * (1.0 - endurance.yield->value() / ultimate), amplitude * (1.0 - borne / ultimate));
    factor = std::max(factor, std::min(without_mean, yielding));
  }
  if (factor > widest) return infinity;
  return factor < 1.0 / widest ? 0.0 : factor;
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
  // As many times the cycles leave each load its share of the life: together at most all of it.
  const auto shares = static_cast<double>(cycles.size());
  double alone = infinity, in_shares = infinity;
  for (const auto& one : cycles) {
    alone = std::min(alone, factor_alone(endurance, one));
    in_shares = std::min(in_shares, factor_alone(endurance, {one.cycle, shares * one.cycles}));
  }
  if (cycles.size() < 2 || !std::isfinite(alone) || alone == 0.0 || in_shares == 0.0) return alone;
  const auto excess = [&](double factor) { return fatigue_damage(endurance, cycles, factor) - 1.0; };
  if (excess(alone) <= 0.0) return alone;  // by rounding: the others come to nothing
  if (excess(in_shares) >= 0.0) return in_shares;
  std::uintmax_t most_rounds = 100;
  const auto [low, high] = boost::math::tools::toms748_solve(
      excess, in_shares, alone, boost::math::tools::eps_tolerance<double>(44), most_rounds);
  return 0.5 * (low + high);
}

double least_fatigue_factor(const Endurance& endurance, const std::vector<RepeatedCycle>& cycles, bool together) {
  if (together) return fatigue_load_factor(endurance, cycles);  // never above that of a load alone
  double least = infinity;
  for (const auto& one : cycles) least = std::min(least, fatigue_load_factor(endurance, {one}));
  return least;
}

std::optional<Duty> duty_of(const Construct& construct, const LoadCase& load) {
  constexpr double days_a_week = 7.0, run_out = 1e6;
  const bool is_day_known =
      construct.healing && std::any_of(construct.loads.begin(), construct.loads.end(),
                                       [](const LoadCase& other) { return other.cycles_per_day.has_value(); });
  if (!is_day_known)
    return Duty{run_out, false, "10^6 cycles, a test's run-out, as the cycles until union are not known"};
  if (!load.cycles_per_day) return std::nullopt;
  const Healing& healing = *construct.healing;
  const double cycles = *load.cycles_per_day * days_a_week * full_weeks(healing, load.name, 0.0, healing.weeks_to);
  return Duty{
      cycles, true,
      fmt::format("{:.0f} cycles, {:g} a day for {:g} weeks{}", cycles, *load.cycles_per_day, healing.weeks_to,
                  healing.protection.empty() ? "" : ", fewer while the patient is protected")};
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

std::vector<RepeatedCycle> repeated_cycles(const std::vector<AskedCycle>& asked) {
  std::vector<RepeatedCycle> cycles;
  for (const auto& one : asked) cycles.push_back({one.cycle, one.duty.cycles});
  return cycles;
}

FatigueFactor worst_load_alone(const EnduranceBand& band, const std::vector<AskedCycle>& asked) {
  FatigueFactor worst;
  for (const auto& one : asked) {
    const std::vector<RepeatedCycle> cycles{{one.cycle, one.duty.cycles}};
    const double middle = fatigue_load_factor(band.middle, cycles);
    if (&one != &asked.front() && !(middle < worst.range.middle)) continue;
    worst = {one.load, {fatigue_load_factor(band.low, cycles), middle, fatigue_load_factor(band.high, cycles)}};
  }
  return worst;
}

std::optional<FatigueFactor> all_loads_together(const EnduranceBand& band, const std::vector<AskedCycle>& asked) {
  if (asked.size() < 2 || !asked.front().duty.is_daily) return std::nullopt;
  const std::vector<RepeatedCycle> cycles = repeated_cycles(asked);
  const auto used = [&](const AskedCycle& one) {
    return fatigue_damage(band.middle, {{one.cycle, one.duty.cycles}});
  };
  const auto most =
      std::max_element(asked.begin(), asked.end(),
                       [&](const AskedCycle& one, const AskedCycle& other) { return used(one) < used(other); });
  return FatigueFactor{most->load,
                       {fatigue_load_factor(band.low, cycles), fatigue_load_factor(band.middle, cycles),
                        fatigue_load_factor(band.high, cycles)}};
}

}  // namespace gapstrain::models
