#include "models/race/implant_damage.h"

#include "models/stress/fatigue.h"

#include <boost/math/tools/toms748_solve.hpp>

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

constexpr double days_a_week = 7.0;
constexpr double least_log_rate = -600.0;  // for places that no load strains

// Sum over a share of an interval of a rate that goes from exp(first) to exp(last) in it with a straight
// logarithm.
double sum_of(double first, double last, double interval, double share) {
  const double slope = last - first;
  const double mean = std::abs(slope) < 1e-9 ? share : std::expm1(slope * share) / slope;
  return std::exp(first) * mean * interval;
}

struct PlaceMetal {
  const Metal* metal;
  FatigueLine line;
};

PlaceMetal metal_at(const HotPlace& place, const Construct& construct, const RaceSample& sample) {
  if (!place.screw) {
    const Metal& metal = only(construct.plates).material;
    return {&metal, fatigue_line(*metal.ultimate_strength,
                                 only(construct.plates).finish_factor * sample.corrosion * sample.strength)};
  }
  const Metal& metal = construct.screws[*place.screw].material;
  return {&metal, fatigue_line(*metal.ultimate_strength,
                               sample.corrosion / place.notch *
                                   strength_of(*metal.fatigue_strength, sample.strength_probability))};
}

}  // namespace

ImplantDamage::ImplantDamage(const StressHistory& history, const CourseStress& stress, const Construct& construct,
                             const RaceSample& sample)
    : loads_(static_cast<Eigen::Index>(history.loads.size())),
      plate_places_(std::count_if(history.places.begin(), history.places.end(),
                                  [](const HotPlace& place) { return !place.screw; })) {
  for (const std::size_t load : history.loads) {
    if (construct.healing->protection.empty()) break;
    auto& times = spared_.emplace_back();
    double from = 0.0;
    for (const ProtectedTime& time : construct.healing->protection) {
      times.push_back({from, time.until_week, share_of_cycles(time, construct.loads[load].name)});
      from = time.until_week;
    }
  }
  std::vector<PlaceMetal> metals;
  for (const auto& place : history.places) metals.push_back(metal_at(place, construct, sample));
  const auto moments = static_cast<Eigen::Index>(stress.progress().size()),
             places = static_cast<Eigen::Index>(stress.places());
  weeks_.resize(moments);
  log_rate_.resize(moments, loads_ * places);
  damage_.setZero(moments, places);
  for (Eigen::Index moment = 0; moment < moments; ++moment) {
    const auto m = static_cast<std::size_t>(moment);
    weeks_(moment) = stress.progress()[m] * sample.weeks_to_union;
    for (Eigen::Index load = 0; load < loads_; ++load) {
      const auto l = static_cast<std::size_t>(load);
      const double cycles = days_a_week * sample.activity * *construct.loads[history.loads[l]].cycles_per_day;
      const auto at_places = stress.at(m, l, size_of(sample, l));
      for (Eigen::Index place = 0; place < places; ++place) {
        const StressCycle& computed = at_places[static_cast<std::size_t>(place)];
        const auto& [metal, line] = metals[static_cast<std::size_t>(place)];
        const Stress reversed =
            reversed_amplitude({sample.stress * computed.amplitude, sample.stress * computed.mean},
                               *metal->ultimate_strength, metal->yield_strength);
        log_rate_(moment, load * places + place) =
            std::max(std::log(cycles / cycles_to_failure(line, reversed)), least_log_rate);
      }
    }
    if (moment == 0) continue;
    damage_.row(moment) = damage_.row(moment - 1);
    for (Eigen::Index k = 0; k < log_rate_.cols(); ++k)
      damage_(moment, k % places) += damage_from(moment - 1, k, weeks_(moment));
  }
}

double ImplantDamage::at(Eigen::Index place, double week) const {
  const Eigen::Index places = damage_.cols();
  const Eigen::Index moment =
      std::upper_bound(weeks_.begin(), weeks_.end(), week) - weeks_.begin() - 1;  // that it is in or after
  double damage = damage_(moment, place);
  for (Eigen::Index k = place; k < log_rate_.cols(); k += places) damage += damage_from(moment, k, week);
  return damage;
}

double ImplantDamage::damage_from(Eigen::Index moment, Eigen::Index column, double week) const {
  const double begin = weeks_(moment);
  const auto full = [&](double to) {
    if (moment + 1 == weeks_.size()) return std::exp(log_rate_(moment, column)) * (to - begin);
    const double interval = weeks_(moment + 1) - begin;
    return sum_of(log_rate_(moment, column), log_rate_(moment + 1, column), interval, (to - begin) / interval);
  };
  double damage = full(week);
  if (spared_.empty()) return damage;
  for (const auto& [from, to, share] : spared_[static_cast<std::size_t>(column / damage_.cols())])
    if (const double first = std::max(from, begin), last = std::min(to, week); first < last)
      damage -= (1.0 - share) * (full(last) - full(first));
  return damage;
}

ImplantDamage::Places ImplantDamage::places_of(Implant implant) const {
  return implant == Implant::plate ? Places{0, plate_places_} : Places{plate_places_, damage_.cols()};
}

std::optional<std::size_t> ImplantDamage::worst_place(Implant implant, double week) const {
  std::optional<std::size_t> worst;
  double most = -1.0;
  const auto [first, last] = places_of(implant);
  for (Eigen::Index place = first; place < last; ++place)
    if (const double damage = at(place, week); damage > most) {
      most = damage;
      worst = static_cast<std::size_t>(place);
    }
  return worst;
}

double ImplantDamage::at(Implant implant, double week) const {
  const auto worst = worst_place(implant, week);
  return worst ? at(static_cast<Eigen::Index>(*worst), week) : 0.0;
}

std::optional<double> ImplantDamage::breaks(Implant implant) const {
  std::optional<double> first_break;
  const auto [first, last] = places_of(implant);
  for (Eigen::Index place = first; place < last; ++place) {
    const double latest = first_break.value_or(five_years);
    const double by_then = at(place, latest) - 1.0;
    if (by_then < 0.0) continue;
    std::uintmax_t rounds = 100;
    const auto bracket =
        boost::math::tools::toms748_solve([&](double week) { return at(place, week) - 1.0; }, 0.0, latest, -1.0,
                                          by_then, boost::math::tools::eps_tolerance<double>(40), rounds);
    first_break = bracket.second;
  }
  return first_break;
}

}  // namespace gapstrain::models
