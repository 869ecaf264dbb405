#include "models/words/race_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>

namespace gapstrain::models {

namespace {

constexpr double hardly = 0.05;  // share of the samples that may be left unsaid, as the bands do
constexpr double least_factor = 0.01, largest_factor = 1e4;

std::string percent(double share) {
  if (share > 0.0 && share < 0.005) return "less than 1 %";
  if (share < 1.0 && share >= 0.995) return "more than 99 %";
  return fmt::format("{:.0f} %", 100.0 * share);
}

std::string factors(const Band& band) {
  const std::string low = factor_text(band.low), high = factor_text(band.high);
  return low == high ? low : low + " to " + high;
}

// The week that a time falls in.
int week_of(double time) { return std::max(1, static_cast<int>(std::ceil(time))); }

std::string weeks(double low, double high) {
  if (week_of(low) == week_of(high)) return fmt::format("in week {}", week_of(low));
  return fmt::format("in week {} to {}", week_of(low), week_of(high));
}

// Of "the plate" or "screws": the verbs go with it.
struct ImplantWords {
  std::string name, outlasts, breaks, is_likely, bears;
};
const ImplantWords plate_words{"The plate", "outlasts", "breaks", "is likely", "bears"};
const ImplantWords screw_words{"Screws", "outlast", "break", "are likely", "bear"};

std::string in_sentence(std::string name) {
  name.front() = static_cast<char>(name.front() - 'A' + 'a');
  return name;
}

constexpr std::string_view tested = "the 10^7 cycles that metals are tested to";

std::string unhealed_ending(const RaceOutcome& outcome) {
  if (!outcome.tested_weeks || *outcome.tested_weeks >= five_years) return "";
  return fmt::format(" From week {} on, beyond {}, that is an ESTIMATE.", week_of(*outcome.tested_weeks), tested);
}

std::string healing_ending(const RaceOutcome& outcome) {
  if (!outcome.tested_factor || outcome.life_factor.high <= *outcome.tested_factor) return "";
  return fmt::format(" Above {}, beyond {}, the factor is an ESTIMATE.", factor_text(*outcome.tested_factor),
                     tested);
}

std::string unhealed_outcome(const RaceOutcome& outcome, const ImplantWords& words) {
  if (outcome.breaks_high)
    return fmt::format("{} {} to break {} if the gap does not stiffen (5th to 95th percentile).", words.name,
                       words.is_likely, weeks(*outcome.breaks_low, *outcome.breaks_high));
  if (outcome.breaks_in_five_years <= hardly)
    return fmt::format("Even if the gap never stiffened, {} would last five years in {} of the samples.",
                       in_sentence(words.name), percent(1.0 - outcome.breaks_in_five_years));
  return fmt::format(
      "If the gap does not stiffen, {} {} within five years in {} of the samples, hardly before week {} (5th "
      "percentile).",
      in_sentence(words.name), words.breaks, percent(outcome.breaks_in_five_years),
      week_of(outcome.breaks_low.value_or(five_years)));
}

std::string unhealed_sentence(const RaceOutcome& outcome, const ImplantWords& words) {
  const bool is_early =
      outcome.breaks_high && outcome.tested_weeks && *outcome.breaks_high <= *outcome.tested_weeks;
  return unhealed_outcome(outcome, words) + (is_early ? "" : unhealed_ending(outcome));
}

std::string healing_outcome(const RaceOutcome& outcome, const ImplantWords& words) {
  const std::string band = factors(outcome.life_factor);
  if (outcome.breaks_before_union <= hardly)
    return fmt::format(
        "{} {} healing by a factor {} (5th to 95th percentile){}.", words.name, words.outlasts, band,
        outcome.breaks_before_union == 0.0
            ? ""
            : fmt::format("; in {} of the samples {} before union is due", percent(outcome.breaks_before_union),
                          words.breaks == "break" ? "they break" : "it breaks"));
  if (outcome.breaks_before_union < 1.0 - hardly)
    return fmt::format(
        "{} {} before union is due in {} of the samples; {} {} times what the time to union asks (5th to "
        "95th percentile), {} in the middle.",
        words.name, words.breaks, percent(outcome.breaks_before_union), words.bears, band,
        factor_text(outcome.life_factor.middle));
  return fmt::format(
      "{} {} to break before union is due{}: {} {} times what the time to union asks (5th to 95th percentile).",
      words.name, words.is_likely,
      outcome.breaks_high ? ", " + weeks(*outcome.breaks_low, *outcome.breaks_high) : "", words.bears, band);
}

std::string healing_sentence(const RaceOutcome& outcome, const ImplantWords& words) {
  return healing_outcome(outcome, words) + healing_ending(outcome);
}

std::string name_of(HealingCourse course) {
  switch (course) {
    case HealingCourse::steady:
      return "If the gap stiffens all over";
    case HealingCourse::governed:
      return "If the gap stiffens where strain allows";
    case HealingCourse::none:
      return "If the gap does not stiffen";
  }
  return {};
}

}  // namespace

std::string weeks_text(double from, const std::optional<double>& to) {
  return to ? weeks(from, *to) : fmt::format("not before week {}", week_of(from));
}

std::string factor_text(double factor) {
  if (factor > largest_factor) return fmt::format("more than {:.0f}", largest_factor);
  if (factor < least_factor) return fmt::format("less than {}", least_factor);
  const double digits = std::pow(10.0, std::floor(std::log10(factor)) - 1.0);
  return fmt::format("{:.6g}", std::round(factor / digits) * digits);
}

std::optional<std::string> union_sentence(const Race& race) {
  const RaceCourse& course = course_of(race, HealingCourse::governed);
  const GapState& at_the_end = race.at_the_end;
  constexpr double whole = 1.0 - 1e-9;
  if (at_the_end.united >= whole && course.united.low >= whole) return std::nullopt;
  const std::string over_samples =
      fmt::format(" Over the samples {} to {} of it unite in time (5th to 95th percentile).",
                  percent(course.united.low), percent(course.united.high));
  if (at_the_end.united >= whole) return "Under the loads as entered the whole gap unites in time." + over_samples;
  const double late = 1.0 - at_the_end.united - at_the_end.held;
  std::string sentence = fmt::format("Under the loads as entered only {} of the gap's area unites in time: ",
                                     percent(at_the_end.united));
  if (at_the_end.held > 0.0)
    sentence += fmt::format("{} of it stays what it is, strained along the bone more than its next tissue bears",
                            percent(at_the_end.held));
  if (at_the_end.held > 0.0 && late > 1e-9) sentence += ", ";
  if (late > 1e-9) sentence += fmt::format("{} is late", percent(late));
  if (at_the_end.claes.fibrous > 0.0)
    sentence +=
        fmt::format("; by the windows of Claes and Heigele {} stays fibrous", percent(at_the_end.claes.fibrous));
  return sentence + "." + over_samples;
}

std::string course_sentence(const RaceCourse& course) {
  return course.course == HealingCourse::none ? unhealed_sentence(course, plate_words)
                                              : healing_sentence(course, plate_words);
}

std::string screw_sentence(const ScrewRace& screws, HealingCourse course) {
  return fmt::format("{} {} has the shortest fatigue life.",
                     course == HealingCourse::none ? unhealed_sentence(screws, screw_words)
                                                   : healing_sentence(screws, screw_words),
                     screws.label);
}

std::string no_race_sentence(const NoRace& no_race) {
  const std::string needs = "The race of bone against plate needs ";
  switch (no_race.reason) {
    case NoRace::Reason::no_healing:
      return needs + "a table [healing] with weeks_from and weeks_to.";
    case NoRace::Reason::no_daily_cycles:
      return needs + "cycles_per_day of the loads that come every day.";
    case NoRace::Reason::no_gap:
      return needs + "an open gap in which tissue stiffens; this fracture has none.";
    case NoRace::Reason::filled_by_step:
      return needs +
             "the construct as the operation leaves it; leave out the step that fills the gap with tissue and "
             "those "
             "after it.";
    case NoRace::Reason::unknown_strength:
      return needs + fmt::format("a metal with ultimate and fatigue strength; {} has none.", no_race.metal);
    case NoRace::Reason::not_asked:
      return "The race of bone against plate is not run here; gapstrain analyse runs it.";
    case NoRace::Reason::without_an_answer:
      break;
  }
  return fmt::format("The race of bone against plate cannot be followed: {}", no_race.error);
}

std::optional<std::string> weight_sentence(const std::vector<InputWeight>& weights) {
  if (weights.size() < 2) return std::nullopt;
  return fmt::format(
      "That hangs most on the {} ({} of the variance of its logarithm, alone and with others), "
      "then on the {} ({}).",
      weights[0].input, percent(std::clamp(weights[0].total.value, 0.0, 1.0)), weights[1].input,
      percent(std::clamp(weights[1].total.value, 0.0, 1.0)));
}

std::vector<std::string> race_verdict(const Race& race) {
  const RaceCourse &governed = course_of(race, HealingCourse::governed),
                   &steady = course_of(race, HealingCourse::steady);
  std::vector<std::string> verdict;
  const auto say = [&](const std::optional<std::string>& sentence) {
    if (sentence) verdict.push_back(*sentence);
  };
  const auto say_both = [&](const RaceCourse& course) {
    const bool screws_first = course.screws && course.screws->life_factor.middle < course.life_factor.middle;
    if (screws_first) say(screw_sentence(*course.screws, course.course));
    say(course_sentence(course));
    if (course.screws && !screws_first) say(screw_sentence(*course.screws, course.course));
  };
  say_both(governed);
  say(union_sentence(race));
  say_both(course_of(race, HealingCourse::none));
  if (const std::string all_over = course_sentence(steady); all_over != course_sentence(governed))
    say("If the gap stiffened all over, whatever the strain: " + all_over);
  say(weight_sentence(race.hangs_on));
  if (race.hangs_on_loads)
    say(fmt::format(
        "Sizes of loads, all together and part by part, account for {} of that variance by themselves.",
        percent(*race.hangs_on_loads)));
  say(fmt::format(
      "Taken for granted: corrosion and fretting leave {:.0f} to {:.0f} % of the fatigue strength, the "
      "model's stress is off by {:.0f} % (standard deviation), tissue stiffens in equal ratios a week; {:.0f} "
      "load "
      "cycles a day in all, times or over {:g}{}: a patient that runs free makes more.",
      100.0 * race.assumptions.corrosion_from, 100.0 * race.assumptions.corrosion_to,
      100.0 * race.assumptions.stress_error, race.cycles_a_day, race.activity_factor,
      race.protected_until > 0.0
          ? fmt::format(", fewer until week {:g}, in which the patient is PROTECTED", race.protected_until)
          : ""));
  return verdict;
}

std::string race_in_short(const Race& race) {
  const auto held_up = union_sentence(race);
  return race_verdict(race).front() + (held_up ? " " + *held_up : "");
}

std::string comparison_sentence(const RaceComparison& comparison, const std::string& first,
                                const std::string& second) {
  const std::string when = name_of(comparison.course);
  const char* part = comparison.with_screws ? "plate or screws, whichever break first" : "plates alone";
  const Band& ratio = comparison.ratio;
  if (ratio.low <= 1.0 && ratio.high >= 1.0)
    return fmt::format(
        "{}, the difference between the implants of \"{}\" and \"{}\" ({}) is within the uncertainty: the first "
        "outlast the second by a factor {} (5th to 95th percentile), above 1 in {} of the samples.",
        when, first, second, part, factors(ratio), percent(comparison.first_outlasts));
  const bool first_wins = ratio.low > 1.0;
  const Band ahead = first_wins ? ratio : Band{1.0 / ratio.high, 1.0 / ratio.middle, 1.0 / ratio.low};
  return fmt::format(
      "{}, the implants of \"{}\" ({}) outlast those of \"{}\" by a factor {} (5th to 95th percentile).", when,
      first_wins ? first : second, part, first_wins ? second : first, factors(ahead));
}

}  // namespace gapstrain::models
