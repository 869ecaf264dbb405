#include "models/race/race_samples.h"

#include "models/parts/load_parts.h"
#include "models/statistics/distribution.h"
#include "models/statistics/statistics.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

// Between equal ends there is nothing to choose.
double between(double low, double high, double probability) {
  return low < high ? quantile({Uniform{low, high}}, probability) : low;
}

double size_of_load(const LoadCase& load, double probability) {
  return load.spread > 0.0 ? quantile({Lognormal{1.0, load.spread}}, probability) : 1.0;
}

LoadPart part_of(Uncertain kind) {
  return kind == Uncertain::axial_part     ? LoadPart::axial
         : kind == Uncertain::bending_part ? LoadPart::bending
                                           : LoadPart::torsion;
}

// The widest of any load.
PartBand widest_band(const StressHistory& history, LoadPart part) {
  PartBand widest;
  for (const auto& bands : history.bands) {
    widest.low = std::min(widest.low, bands[index_of(part)].low);
    widest.high = std::max(widest.high, bands[index_of(part)].high);
  }
  return widest;
}

double value(const StressHistory& history, const Construct& construct, const RaceAssumptions& assumptions,
             Uncertain kind, double probability) {
  const Healing& healing = *construct.healing;
  switch (kind) {
    case Uncertain::load_size: {
      const auto widest =
          std::max_element(history.loads.begin(), history.loads.end(), [&](std::size_t one, std::size_t other) {
            return construct.loads[one].spread < construct.loads[other].spread;
          });
      return size_of_load(construct.loads[*widest], probability);
    }
    case Uncertain::activity: {
      const double widest = std::log(healing.activity_factor);
      return std::exp(between(-widest, widest, probability));
    }
    case Uncertain::strength:
      return strength_of(*only(construct.plates).material.fatigue_strength, probability).value();
    case Uncertain::corrosion:
      return between(assumptions.corrosion_from, assumptions.corrosion_to, probability);
    case Uncertain::stress_error: {
      if (assumptions.stress_error <= 0.0) return 1.0;
      constexpr double farthest = 4.0;  // deviations
      const double reach = farthest * assumptions.stress_error;
      return quantile({Normal{1.0, assumptions.stress_error}, std::max(1.0 - reach, 0.01), 1.0 + reach},
                      probability);
    }
    case Uncertain::union_week:
      return between(healing.weeks_from, healing.weeks_to, probability);
    case Uncertain::axial_part:
    case Uncertain::bending_part:
    case Uncertain::torsion_part:
      return part_factor(widest_band(history, part_of(kind)), probability);
  }
  return 0.0;
}

RaceInput words_of(const Construct& construct, Uncertain kind) {
  switch (kind) {
    case Uncertain::load_size:
      return {"size of the loads", {}, "times nominal", "lognormal; spread of the loads in the case"};
    case Uncertain::activity:
      return {"activity", {}, "times the cycles a day", "log-uniform; activity_factor of the case"};
    case Uncertain::strength:
      return {"fatigue strength",
              {},
              "MPa",
              "triangular; " + only(construct.plates).material.fatigue_strength->source};
    case Uncertain::corrosion:
      return {"corrosion and fretting",
              {},
              "of the fatigue strength left",
              "uniform; 10 to 20 % off is often taken, from memory, no source"};
    case Uncertain::stress_error:
      return {"error of the model's stress",
              {},
              "times computed",
              "normal; an estimate for the default mesh, no source"};
    case Uncertain::union_week:
      return {"week of union", {}, "weeks", "uniform; weeks_from and weeks_to of the case"};
    case Uncertain::axial_part:
    case Uncertain::bending_part:
    case Uncertain::torsion_part: {
      const LoadPart part = part_of(kind);
      return {fmt::format("{} of the loads", name_of(part)),
              {},
              "times as entered",
              fmt::format("as likely below the size entered as above it, log-uniform on either side (a choice of "
                          "this program, no source); {} of the case",
                          key_of_band(part))};
    }
  }
  return {};
}

}  // namespace

Stress strength_of(const FatigueStrength& strength, double probability) {
  const double low = strength.low.value(), high = strength.high.value();
  return (low < high ? quantile({Triangular{low, strength.middle.value(), high}}, probability) : low) * mpa;
}

std::vector<Uncertain> uncertain_in(const StressHistory& history) {
  std::vector<Uncertain> kinds;
  for (const Uncertain kind : all_uncertain)
    if (kind < Uncertain::axial_part || std::find(history.sampled_parts.begin(), history.sampled_parts.end(),
                                                  part_of(kind)) != history.sampled_parts.end())
      kinds.push_back(kind);
  return kinds;
}

RacePoint race_point(const std::vector<Uncertain>& kinds, const Eigen::VectorXd& values) {
  RacePoint point = RacePoint::Constant(0.5);
  for (std::size_t k = 0; k < kinds.size(); ++k)
    point(static_cast<Eigen::Index>(kinds[k])) = values(static_cast<Eigen::Index>(k));
  return point;
}

LoadSize size_of(const RaceSample& sample, std::size_t load) {
  return {sample.load_factors[load], sample.parts.empty() ? all_as_entered : sample.parts[load]};
}

RaceSample race_sample(const StressHistory& history, const Construct& construct,
                       const RaceAssumptions& assumptions, const RacePoint& point) {
  const auto of = [&](Uncertain kind) {
    return value(history, construct, assumptions, kind, point(static_cast<Eigen::Index>(kind)));
  };
  RaceSample sample;
  for (const std::size_t load : history.loads)
    sample.load_factors.push_back(
        size_of_load(construct.loads[load], point(static_cast<Eigen::Index>(Uncertain::load_size))));
  sample.activity = of(Uncertain::activity);
  sample.strength = of(Uncertain::strength) * mpa;
  sample.corrosion = of(Uncertain::corrosion);
  sample.stress = of(Uncertain::stress_error);
  sample.weeks_to_union = of(Uncertain::union_week);
  sample.strength_probability = point(static_cast<Eigen::Index>(Uncertain::strength));
  for (const auto& bands : history.bands) {
    PartFactors& factors = sample.parts.emplace_back(all_as_entered);
    for (const Uncertain kind : {Uncertain::axial_part, Uncertain::bending_part, Uncertain::torsion_part}) {
      const std::size_t part = index_of(part_of(kind));
      factors[part] = part_factor(bands[part], point(static_cast<Eigen::Index>(kind)));
    }
  }
  return sample;
}

std::vector<RaceInput> race_inputs(const StressHistory& history, const Construct& construct,
                                   const RaceAssumptions& assumptions) {
  std::vector<RaceInput> inputs;
  for (const Uncertain kind : uncertain_in(history)) {
    inputs.push_back(words_of(construct, kind));
    const auto at = [&](double probability) { return value(history, construct, assumptions, kind, probability); };
    inputs.back().of_loads = kind == Uncertain::load_size || kind >= Uncertain::axial_part;
    inputs.back().spread = {at(0.05), at(0.5), at(0.95)};
  }
  return inputs;
}

Band band_of(const Eigen::VectorXd& outcomes) {
  const auto values = percentiles(outcomes, {0.05, 0.5, 0.95}).values;
  return {values[0], values[1], values[2]};
}

}  // namespace gapstrain::models
