#include "models/review/race.h"

#include "models/review/race_runs.h"
#include "models/review/race_sentences.h"
#include "models/studies/saltelli_design.h"

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

constexpr std::uint64_t design_seed = 1;
constexpr double never = 1e6;  // weeks: beyond any that is reported

std::vector<double> whole_weeks(double last) {
  std::vector<double> weeks;
  for (int week = 0; week <= std::ceil(last); ++week) weeks.push_back(week);
  return weeks;
}

// Share of the area that has united when union is due, at a load of this size.
double united_at(const StressHistory& history, const StressHistory::Course& course, double load_factor) {
  const auto& factors = history.load_factors;
  const auto above =
      std::clamp<std::ptrdiff_t>(std::upper_bound(factors.begin(), factors.end(), load_factor) - factors.begin(),
                                 1, static_cast<std::ptrdiff_t>(factors.size()) - 1);
  const auto high = static_cast<std::size_t>(above), low = high - 1;
  const double share = std::clamp((load_factor - factors[low]) / (factors[high] - factors[low]), 0.0, 1.0);
  return (1.0 - share) * course.united[low] + share * course.united[high];
}

std::optional<double> within_five_years(double week) {
  constexpr double five_years = 260.0;
  return week <= five_years ? std::optional(week) : std::nullopt;
}

std::optional<ScrewRace> summarise_screws(const std::vector<SampleRun>& runs, const Construct& construct) {
  std::vector<Eigen::Index> worst(construct.screws.size(), 0);
  Eigen::VectorXd factors(static_cast<Eigen::Index>(runs.size()));
  for (Eigen::Index k = 0; k < factors.size(); ++k) {
    const SampleRun& run = runs[static_cast<std::size_t>(k)];
    if (!run.worst_screw) return std::nullopt;
    ++worst[*run.worst_screw];
    factors(k) = life_factor(run.screw_damage_at_union);
  }
  ScrewRace race;
  race.label =
      construct.screws[static_cast<std::size_t>(std::max_element(worst.begin(), worst.end()) - worst.begin())]
          .label;
  race.life_factor = band_of(factors);
  race.breaks_before_union =
      static_cast<double>((factors.array() <= 1.0).count()) / static_cast<double>(factors.size());
  return race;
}

RaceCourse summarise(HealingCourse kind, const std::vector<SampleRun>& runs, const Eigen::VectorXd& united,
                     const Construct& construct) {
  const auto count = static_cast<Eigen::Index>(runs.size());
  RaceCourse course;
  course.course = kind;
  Eigen::VectorXd outcomes(count), breaks(count);
  const auto share_where = [&](const auto& holds) {
    return static_cast<double>(std::count_if(runs.begin(), runs.end(), holds)) / static_cast<double>(count);
  };
  for (Eigen::Index week = 0; week < runs.front().damage.size(); ++week) {
    for (Eigen::Index k = 0; k < count; ++k) outcomes(k) = runs[static_cast<std::size_t>(k)].damage(week);
    course.damage.push_back(band_of(outcomes));
  }
  for (Eigen::Index k = 0; k < count; ++k) {
    const SampleRun& run = runs[static_cast<std::size_t>(k)];
    outcomes(k) = life_factor(run.damage_at_union);
    breaks(k) = run.breaks.value_or(never);
  }
  course.life_factor = band_of(outcomes);
  course.united = band_of(united);
  course.breaks_before_union = share_where([](const SampleRun& run) { return run.damage_at_union >= 1.0; });
  course.breaks_in_five_years = share_where([](const SampleRun& run) { return run.breaks.has_value(); });
  const Band when = band_of(breaks);
  course.breaks_low = within_five_years(when.low);
  course.breaks_middle = within_five_years(when.middle);
  course.breaks_high = within_five_years(when.high);
  course.screws = summarise_screws(runs, construct);
  if (course.screws) course.screws->sentence = screw_sentence(*course.screws, kind);
  course.sentence = course_sentence(course);
  return course;
}

}  // namespace

Race run_race(const StressHistory& history, const Construct& construct, const RaceAssumptions& assumptions) {
  const auto kinds = static_cast<Eigen::Index>(all_uncertain.size());
  const SaltelliDesign design(assumptions.base_points, kinds, design_seed);
  Race race;
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
    side_by_side(design.points(), [&](Eigen::Index row) {
      const bool counts = row % width < 2;
      if (!counts && !is_governed) return;
      const RaceSample sample = race_sample(history, construct, assumptions, design.point(row));
      SampleRun run = run_sample(history, stress, construct, sample, counts ? race.weeks : std::vector<double>{});
      if (is_governed) log_life(row) = std::log(life_factor(run.damage_at_union));
      if (!counts) return;
      const Eigen::Index place = row / width * 2 + row % width;
      united(place) = united_at(history, course, sample.load_factors.front());
      runs[static_cast<std::size_t>(place)] = std::move(run);
    });
    race.courses.push_back(summarise(course.course, runs, united, construct));
    if (!is_governed) continue;
    race.held_up = union_sentence(race.courses.back(), course.gap.back());
    std::vector<std::string> names;
    for (const auto& input : race.inputs) names.push_back(input.name);
    race.hangs_on = weigh_inputs(log_life, names);
  }
  race.verdict = verdict_of(race, assumptions);
  return race;
}

}  // namespace gapstrain::models
