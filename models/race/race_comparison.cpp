#include "models/race/race_runs.h"
#include "models/statistics/saltelli_design.h"
#include "solver/host/side_by_side.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace gapstrain::models {

namespace {

// Where each construct's own inputs stand among those of both.
struct SharedInputs {
  std::vector<std::string> names;
  static constexpr Eigen::Index absent = -1;  // in either construct
  std::array<std::array<Eigen::Index, all_uncertain.size()>, 2> places{};

  RacePoint point(std::size_t construct, const Eigen::VectorXd& all) const {
    RacePoint own = RacePoint::Constant(0.5);
    for (std::size_t k = 0; k < all_uncertain.size(); ++k)
      if (places[construct][k] != absent) own(static_cast<Eigen::Index>(k)) = all(places[construct][k]);
    return own;
  }
};

// Of either construct, by kind.
std::map<Uncertain, std::string> names_of_inputs(const StressHistory& first, const Construct& first_construct,
                                                 const StressHistory& second, const Construct& second_construct,
                                                 const RaceAssumptions& assumptions) {
  std::map<Uncertain, std::string> names;
  const auto add = [&](const StressHistory& history, const Construct& construct) {
    const auto kinds = uncertain_in(history);
    const auto inputs = race_inputs(history, construct, assumptions);
    for (std::size_t k = 0; k < kinds.size(); ++k) names.emplace(kinds[k], inputs[k].name);
  };
  add(first, first_construct);
  add(second, second_construct);
  return names;
}

SharedInputs share_inputs(const std::map<Uncertain, std::string>& names, const Construct& first,
                          const Construct& second) {
  SharedInputs shared;
  for (auto& places : shared.places) places.fill(SharedInputs::absent);
  for (const auto& named : names) {
    const auto& [kind, input] = named;
    const auto k = static_cast<std::size_t>(kind);
    const bool is_own =
        kind == Uncertain::stress_error ||
        (kind == Uncertain::strength && only(first.plates).material != only(second.plates).material);
    const auto add = [&](const std::string& name) {
      shared.names.push_back(name);
      return static_cast<Eigen::Index>(shared.names.size()) - 1;
    };
    shared.places[0][k] = add(is_own ? fmt::format("{} in \"{}\"", input, first.name) : input);
    shared.places[1][k] = is_own ? add(fmt::format("{} in \"{}\"", input, second.name)) : shared.places[0][k];
  }
  return shared;
}

}  // namespace

std::vector<RaceComparison> compare_races(const StressHistory& first, const Construct& first_construct,
                                          const StressHistory& second, const Construct& second_construct,
                                          const RaceAssumptions& assumptions) {
  const SharedInputs shared =
      share_inputs(names_of_inputs(first, first_construct, second, second_construct, assumptions), first_construct,
                   second_construct);
  const auto count = static_cast<Eigen::Index>(shared.names.size()), width = count + 2;
  const SaltelliDesign design(assumptions.base_points, count, race_design_seed);
  // Screws of one alone would count against it.
  const auto has_screws = [](const StressHistory& history) {
    return std::any_of(history.places.begin(), history.places.end(),
                       [](const HotPlace& place) { return place.screw; });
  };
  const bool with_screws = has_screws(first) && has_screws(second);
  std::vector<RaceComparison> comparisons;
  for (std::size_t c = 0; c < first.courses.size(); ++c) {
    const CourseStress first_stress(first, first.courses[c]), second_stress(second, second.courses[c]);
    Eigen::VectorXd log_ratio(design.points());
    solver::side_by_side(static_cast<std::size_t>(design.points()), [&](std::size_t index) {
      const auto row = static_cast<Eigen::Index>(index);
      const Eigen::VectorXd point = design.point(row);
      const auto log_life = [&](std::size_t which, const StressHistory& history, const CourseStress& stress,
                                const Construct& construct) {
        const RaceSample sample = race_sample(history, construct, assumptions, shared.point(which, point));
        const SampleRun run = run_sample(history, stress, construct, sample, {});
        return std::log(life_factor(with_screws ? std::max(run.plate.damage_at_union, run.screws.damage_at_union)
                                                : run.plate.damage_at_union));
      };
      log_ratio(row) =
          log_life(0, first, first_stress, first_construct) - log_life(1, second, second_stress, second_construct);
    });
    // Bands are taken over the rows A and B.
    Eigen::VectorXd ratios(2 * assumptions.base_points);
    for (Eigen::Index k = 0; k < ratios.size(); ++k) ratios(k) = std::exp(log_ratio(k / 2 * width + k % 2));
    RaceComparison comparison;
    comparison.with_screws = with_screws;
    comparison.course = first.courses[c].course;
    comparison.ratio = band_of(ratios);
    comparison.first_outlasts =
        static_cast<double>((ratios.array() > 1.0).count()) / static_cast<double>(ratios.size());
    comparison.hangs_on = weigh_inputs(log_ratio, shared.names);
    comparisons.push_back(std::move(comparison));
  }
  return comparisons;
}

}  // namespace gapstrain::models
