#include "models/race/race.h"

#include "models/race/race_runs.h"
#include "models/statistics/saltelli_design.h"
#include "models/stress/fatigue.h"
#include "solver/host/side_by_side.h"

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

constexpr double never = 1e6;  // weeks: beyond any that is reported

std::vector<double> whole_weeks(double last) {
  std::vector<double> weeks;
  for (int week = 0; week <= std::ceil(last); ++week) weeks.push_back(week);
  return weeks;
}

// Of the loads, the size that strains the gap most.
double largest_by_strain(const StressHistory& history, const RaceSample& sample) {
  double largest = 0.0;
  for (std::size_t load = 0; load < sample.load_factors.size(); ++load)
    largest = std::max(largest, size_by_strain(history, load, size_of(sample, load)));
  return largest;
}

// Share of the area that has united when union is due, at a load of this size.
double united_at(const StressHistory& history, const StressHistory::Course& course, double load_factor) {
  const auto& factors = history.load_factors;
  const auto [low, high] = bracket_of(factors, load_factor);
  const double share = std::clamp((load_factor - factors[low]) / (factors[high] - factors[low]), 0.0, 1.0);
  return (1.0 - share) * course.united[low] + share * course.united[high];
}

std::optional<double> within_five_years(double week) {
  return week <= five_years ? std::optional(week) : std::nullopt;
}

RaceOutcome outcome_of(const std::vector<SampleRun>& runs, ImplantRun SampleRun::*implant) {
  const auto count = static_cast<Eigen::Index>(runs.size());
  const auto run = [&](Eigen::Index k) -> const ImplantRun& { return runs[static_cast<std::size_t>(k)].*implant; };
  RaceOutcome outcome;
  Eigen::VectorXd damage(count), factors(count), breaks(count);
  for (Eigen::Index week = 0; week < run(0).damage.size(); ++week) {
    for (Eigen::Index k = 0; k < count; ++k) damage(k) = run(k).damage(week);
    outcome.damage.push_back(band_of(damage));
  }
  Eigen::Index before_union = 0, in_five_years = 0;
  for (Eigen::Index k = 0; k < count; ++k) {
    factors(k) = life_factor(run(k).damage_at_union);
    breaks(k) = run(k).breaks.value_or(never);
    before_union += run(k).damage_at_union >= 1.0 ? 1 : 0;
    in_five_years += run(k).breaks ? 1 : 0;
  }
  outcome.life_factor = band_of(factors);
  outcome.breaks_before_union = static_cast<double>(before_union) / static_cast<double>(count);
  outcome.breaks_in_five_years = static_cast<double>(in_five_years) / static_cast<double>(count);
  const Band when = band_of(breaks);
  outcome.breaks_low = within_five_years(when.low);
  outcome.breaks_middle = within_five_years(when.middle);
  outcome.breaks_high = within_five_years(when.high);
  return outcome;
}

double cycles_a_day(const Construct& construct) {
  double cycles = 0.0;
  for (const auto& load : construct.loads) cycles += load.cycles_per_day.value_or(0.0);
  return cycles;
}

void add_tested(const Race& race, const Construct& construct, RaceOutcome& outcome) {
  double until_union = 0.0;
  for (const auto& load : construct.loads)
    until_union += load.cycles_per_day.value_or(0.0) * 7.0 *
                   full_weeks(*construct.healing, load.name, 0.0, race.union_week.middle);
  if (until_union > 0.0) outcome.tested_factor = last_tested_cycles / until_union;
  if (race.cycles_a_day > 0.0) outcome.tested_weeks = last_tested_cycles / (7.0 * race.cycles_a_day);
}

std::optional<ScrewRace> summarise_screws(const std::vector<SampleRun>& runs, const Construct& construct) {
  std::vector<Eigen::Index> worst(construct.screws.size(), 0);
  for (const auto& run : runs) {
    if (!run.worst_screw) return std::nullopt;
    ++worst[*run.worst_screw];
  }
  const Screw& screw =
      construct.screws[static_cast<std::size_t>(std::max_element(worst.begin(), worst.end()) - worst.begin())];
  return ScrewRace{outcome_of(runs, &SampleRun::screws), screw.id, screw.label};
}

RaceCourse summarise(HealingCourse kind, const std::vector<SampleRun>& runs, const Eigen::VectorXd& united,
                     const Construct& construct) {
  return {outcome_of(runs, &SampleRun::plate), kind, band_of(united), summarise_screws(runs, construct)};
}

double share_of_loads(const Race& race) {
  double share = 0.0;
  for (const RaceInput& input : race.inputs)
    for (const InputWeight& weight : race.hangs_on)
      if (input.of_loads && weight.input == input.name) share += std::clamp(weight.first.value, 0.0, 1.0);
  return std::min(share, 1.0);
}

}  // namespace

const RaceCourse& course_of(const Race& race, HealingCourse course) {
  return *std::find_if(race.courses.begin(), race.courses.end(),
                       [&](const RaceCourse& run) { return run.course == course; });
}

Race run_race(const StressHistory& history, const Construct& construct, const RaceAssumptions& assumptions) {
  const std::vector<Uncertain> uncertain = uncertain_in(history);
  const auto kinds = static_cast<Eigen::Index>(uncertain.size());
  const SaltelliDesign design(assumptions.base_points, kinds, race_design_seed);
  Race race;
  race.assumptions = assumptions;
  race.cycles_a_day = cycles_a_day(construct);
  if (!construct.healing->protection.empty())
    race.protected_until = construct.healing->protection.back().until_week;
  race.activity_factor = construct.healing->activity_factor;
  race.weeks = whole_weeks(construct.healing->weeks_to);
  race.inputs = race_inputs(history, construct, assumptions);
  race.union_week = race.inputs[static_cast<std::size_t>(Uncertain::union_week)].spread;
  // Bands are taken over the rows A and B; the others serve the indices alone.
  const Eigen::Index width = kinds + 2;
  race.samples = static_cast<std::size_t>(2 * assumptions.base_points);
  for (const auto& course : history.courses) {
    const CourseStress stress(history, course);
    const bool is_governed = course.course == HealingCourse::governed;
    std::vector<SampleRun> runs(race.samples);
    Eigen::VectorXd united(static_cast<Eigen::Index>(race.samples)), log_life(is_governed ? design.points() : 0);
    solver::side_by_side(static_cast<std::size_t>(design.points()), [&](std::size_t index) {
      const auto row = static_cast<Eigen::Index>(index);
      const bool counts = row % width < 2;
      if (!counts && !is_governed) return;
      const RaceSample sample =
          race_sample(history, construct, assumptions, race_point(uncertain, design.point(row)));
      SampleRun run = run_sample(history, stress, construct, sample, counts ? race.weeks : std::vector<double>{});
      if (is_governed) log_life(row) = std::log(life_factor(run.plate.damage_at_union));
      if (!counts) return;
      const Eigen::Index place = row / width * 2 + row % width;
      united(place) = united_at(history, course, largest_by_strain(history, sample));
      runs[static_cast<std::size_t>(place)] = std::move(run);
    });
    RaceCourse& summary = race.courses.emplace_back(summarise(course.course, runs, united, construct));
    add_tested(race, construct, summary);
    if (summary.screws) add_tested(race, construct, *summary.screws);
    if (!is_governed) continue;
    race.at_the_end = course.gap.back();
    std::vector<std::string> names;
    for (const auto& input : race.inputs) names.push_back(input.name);
    race.hangs_on = weigh_inputs(log_life, names);
    if (!history.sampled_parts.empty()) race.hangs_on_loads = share_of_loads(race);
  }
  return race;
}

}  // namespace gapstrain::models
