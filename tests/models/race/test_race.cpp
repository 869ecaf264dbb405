// The race on stress histories made up by hand: everything has a closed form.
#include "models/race/race.h"

#include "models/race/implant_damage.h"
#include "models/stress/fatigue.h"
#include "models/words/race_words.h"

#include <boost/math/distributions/normal.hpp>
#include <catch2/catch.hpp>

#include <cmath>
#include <functional>

namespace gapstrain {

using namespace models;  // NOLINT: this file is nothing but the race

namespace {

constexpr double cycles_a_day = 3000.0, ultimate = 930.0, strength = 380.0;

// A plate of one metal under one load; nothing is uncertain but what a test makes so.
Construct sure_construct(double weeks = 10.0) {
  Construct construct;
  construct.name = "made up";
  only(construct.plates).material.name = "test metal";
  only(construct.plates).material.ultimate_strength = ultimate * mpa;
  only(construct.plates).material.fatigue_strength =
      FatigueStrength{strength * mpa, strength * mpa, strength * mpa, "made up"};
  LoadCase load;
  load.name = "walk";
  load.cycles_per_day = cycles_a_day;
  load.spread = 0.0;
  construct.loads = {load};
  Healing healing;
  healing.weeks_from = healing.weeks_to = weeks;
  healing.at_first = *find_tissue("granulation-tissue");
  healing.at_union = *find_tissue("mature-woven-bone");
  healing.activity_factor = 1.0;
  construct.healing = healing;
  return construct;
}

RaceAssumptions sure(Eigen::Index points = 256) { return {1.0, 1.0, 0.0, points}; }

// Reversed stress at each place, MPa at load factor 1 and in proportion to the load, over progress; `loads` of
// them alike. The course without healing stays at the first moment.
using OverProgress = std::function<double(double progress, std::size_t place)>;

StressHistory history_of(const OverProgress& amplitude, std::size_t places = 1, std::size_t loads = 1) {
  StressHistory history;
  history.progress = {0.0, 0.25, 0.5, 0.75, 1.0};
  history.load_factors = {0.5, 1.0, 2.0};
  for (std::size_t load = 0; load < loads; ++load) history.loads.push_back(load);
  history.places.resize(places);
  for (const auto kind : {HealingCourse::steady, HealingCourse::governed, HealingCourse::none}) {
    StressHistory::Course course;
    course.course = kind;
    for (const double progress : history.progress) {
      GapState gap;
      gap.united = kind == HealingCourse::none ? 0.0 : progress < 1.0 ? 0.0 : 1.0;
      course.gap.push_back(gap);
      auto& factors = course.cycles.emplace_back();
      for (const double factor : history.load_factors) {
        std::vector<StressCycle> cycles;
        for (std::size_t place = 0; place < places; ++place)
          cycles.push_back(
              {factor * amplitude(kind == HealingCourse::none ? 0.0 : progress, place) * mpa, 0.0 * mpa});
        factors.emplace_back(loads, cycles);
      }
    }
    course.united.assign(history.load_factors.size(), kind == HealingCourse::none ? 0.0 : 1.0);
    history.courses.push_back(course);
  }
  return history;
}

StressHistory constant(double amplitude) {
  return history_of([=](double, std::size_t) { return amplitude; });
}

double life_in_weeks(double amplitude) {
  const FatigueLine line = fatigue_line(ultimate * mpa, strength * mpa);
  return cycles_to_failure(line, amplitude * mpa) / (7.0 * cycles_a_day);
}

double exponent() { return fatigue_line(ultimate * mpa, strength * mpa).b; }

double log_quantile(double deviation, double probability) {
  return boost::math::quantile(boost::math::normal(0.0, deviation), probability);
}

}  // namespace

TEST_CASE("under a constant stress the plate lasts as many cycles as the fatigue line says", "[models][review]") {
  const Race race = run_race(constant(420.0), sure_construct(), sure());
  const double life = life_in_weeks(420.0);
  REQUIRE(life < 260.0);
  for (const auto& course : race.courses) {
    CHECK(course.life_factor.low == Approx(life / 10.0).epsilon(1e-12));
    CHECK(course.life_factor.high == Approx(life / 10.0).epsilon(1e-12));
    CHECK(course.breaks_middle.value() == Approx(life).epsilon(1e-9));
  }
}

TEST_CASE("damage grows straight with the weeks while nothing heals", "[models][review]") {
  const auto stiffening = history_of([](double progress, std::size_t) { return 420.0 * (1.0 - 0.9 * progress); });
  const Race race = run_race(stiffening, sure_construct(12.0), sure());
  const auto& none = course_of(race, HealingCourse::none);
  REQUIRE(race.weeks.size() == 13);
  CHECK(none.damage[0].high == 0.0);
  for (std::size_t week = 1; week < race.weeks.size(); ++week)
    CHECK(none.damage[week].middle == Approx(static_cast<double>(week) / life_in_weeks(420.0)).epsilon(1e-12));
}

TEST_CASE("of a stress that falls in equal ratios the damage is that of many small steps", "[models][review]") {
  constexpr double first = 420.0, last = 60.0, weeks = 10.0;
  const auto falling =
      history_of([](double progress, std::size_t) { return first * std::pow(last / first, progress); });
  const Race race = run_race(falling, sure_construct(weeks), sure());
  constexpr int steps = 200000;
  double damage = 0.0;
  for (int step = 0; step < steps; ++step)
    damage += weeks / steps / life_in_weeks(first * std::pow(last / first, (step + 0.5) / steps));
  const auto& steady = course_of(race, HealingCourse::steady);
  CHECK(steady.damage.back().middle == Approx(damage).epsilon(1e-8));
  // Halfway through a moment, too: week 3 of 10 lies in the second quarter.
  double until_third = 0.0;
  for (int step = 0; step < steps; ++step)
    until_third += 3.0 / steps / life_in_weeks(first * std::pow(last / first, 0.3 * (step + 0.5) / steps));
  CHECK(steady.damage[3].middle == Approx(until_third).epsilon(1e-8));
}

TEST_CASE("the worst place counts, and loads add up at each", "[models][review]") {
  Construct construct = sure_construct();
  const auto two_places = history_of([](double, std::size_t place) { return place == 0 ? 300.0 : 400.0; }, 2);
  CHECK(run_race(two_places, construct, sure()).courses[0].life_factor.middle ==
        Approx(life_in_weeks(400.0) / 10.0));
  construct.loads.push_back(construct.loads[0]);
  const auto two_loads = history_of([](double, std::size_t) { return 400.0; }, 1, 2);
  CHECK(run_race(two_loads, construct, sure()).courses[0].life_factor.middle ==
        Approx(0.5 * life_in_weeks(400.0) / 10.0));
}

TEST_CASE("screws are raced beside the plate, each place with its own notch", "[models][review]") {
  Construct construct = sure_construct();
  construct.screws.resize(2);
  for (auto& screw : construct.screws) screw.material = only(construct.plates).material;
  construct.screws[0].label = "S1";
  construct.screws[1].label = "S2";
  construct.screws[1].id = ScrewId{7};
  auto history =
      history_of([](double, std::size_t place) { return place == 0   ? 400.0
                                                        : place == 1 ? 150.0
                                                                     : 160.0; }, 3);
  for (const std::size_t k : {1U, 2U}) history.places[k].screw = k - 1;
  history.places[2].notch = 3.8;
  const Race race = run_race(history, construct, sure());
  const RaceCourse& course = race.courses[0];
  CHECK(course.life_factor.middle == Approx(life_in_weeks(400.0) / 10.0));  // the plate's own
  REQUIRE(course.screws);
  CHECK(course.screws->label == "S2");
  // The strength over 3.8 at 10^7 cycles and 0.9 of the ultimate at 10^3, by hand.
  const double b = std::log(strength / 3.8 / (0.9 * ultimate)) / std::log(1e4);
  const double cycles = 1e3 * std::pow(160.0 / (0.9 * ultimate), 1.0 / b);
  CHECK(course.screws->life_factor.middle == Approx(cycles / (7.0 * cycles_a_day) / 10.0));
  CHECK(course.screws->breaks_before_union == (cycles / (7.0 * cycles_a_day) < 10.0 ? 1.0 : 0.0));
  CHECK(course.screws->screw == ScrewId{7});
  CHECK(race_verdict(race).front() == screw_sentence(*course.screws, course.course));
  // A metal without fatigue strength is not followed, and then there is nothing to say.
  history.places.resize(1);
  CHECK_FALSE(run_race(history, construct, sure()).courses[0].screws);
}

TEST_CASE(
    "log life falls with log load by the inverse of the fatigue line's exponent, also beyond all load factors",
    "[models][review]") {
  const Construct construct = sure_construct();
  const StressHistory history = constant(250.0);
  const CourseStress stress(history, history.courses[0]);
  const auto damage = [&](double factor) {
    const RaceSample sample{{factor}, 1.0, strength * mpa, 1.0, 1.0, 10.0};
    return ImplantDamage(history, stress, construct, sample).at(Implant::plate, 10.0);
  };
  for (const double factor : {0.3, 0.6, 1.0, 1.7, 2.0, 2.4}) {
    CAPTURE(factor);
    CHECK(std::log(damage(factor) / damage(1.0)) == Approx(-std::log(factor) / exponent()).margin(1e-9));
  }
}

TEST_CASE("what lowers the strength shortens life by the fatigue line through it", "[models][review]") {
  Construct construct = sure_construct();
  only(construct.plates).finish_factor = 0.8;
  RaceAssumptions corroding = sure();
  corroding.corrosion_from = corroding.corrosion_to = 0.9;
  const FatigueLine line = fatigue_line(ultimate * mpa, 0.8 * 0.9 * strength * mpa);
  CHECK(run_race(constant(250.0), construct, corroding).courses[0].life_factor.middle ==
        Approx(cycles_to_failure(line, 250.0 * mpa) / (7.0 * cycles_a_day * 10.0)));
}

TEST_CASE("of a single uncertain input the bands are its own percentiles carried through", "[models][review]") {
  const double sure_life = life_in_weeks(300.0) / 10.0;
  SECTION("activity, log-uniform") {
    Construct construct = sure_construct();
    construct.healing->activity_factor = 3.0;
    const Band life = run_race(constant(300.0), construct, sure(1024)).courses[0].life_factor;
    CHECK(life.low == Approx(sure_life * std::pow(3.0, -0.9)).epsilon(2e-3));
    CHECK(life.middle == Approx(sure_life).epsilon(2e-3));
    CHECK(life.high == Approx(sure_life * std::pow(3.0, 0.9)).epsilon(2e-3));
  }
  SECTION("size of the loads, lognormal") {
    Construct construct = sure_construct();
    construct.loads[0].spread = 0.2;
    const Band life = run_race(constant(300.0), construct, sure(1024)).courses[0].life_factor;
    const double variance = std::log1p(0.04), deviation = std::sqrt(variance);
    const auto expected = [&](double probability) {
      const double log_load = -0.5 * variance + log_quantile(deviation, 1.0 - probability);
      return sure_life * std::exp(log_load / exponent());
    };
    CHECK(life.low == Approx(expected(0.05)).epsilon(0.02));
    CHECK(life.middle == Approx(expected(0.5)).epsilon(0.01));
    CHECK(life.high == Approx(expected(0.95)).epsilon(0.02));
  }
  SECTION("week of union, uniform") {
    Construct construct = sure_construct();
    construct.healing->weeks_to = 20.0;
    const Race race = run_race(constant(300.0), construct, sure(1024));
    CHECK(race.courses[0].life_factor.low == Approx(life_in_weeks(300.0) / 19.5).epsilon(2e-3));
    CHECK(race.courses[0].life_factor.high == Approx(life_in_weeks(300.0) / 10.5).epsilon(2e-3));
    CHECK(race.union_week.middle == Approx(15.0));
  }
}

TEST_CASE("inputs weigh by their share of the logarithm's variance", "[models][review]") {
  Construct construct = sure_construct();
  construct.loads[0].spread = 0.2;
  construct.healing->activity_factor = 4.0;
  const Race race = run_race(constant(300.0), construct, sure(1024));
  const double of_loads = std::log1p(0.04) / (exponent() * exponent());
  const double of_activity = std::pow(2.0 * std::log(4.0), 2) / 12.0;
  REQUIRE(race.hangs_on.size() == 6);
  CHECK(race.hangs_on[0].input == "size of the loads");
  CHECK(race.hangs_on[0].total.value == Approx(of_loads / (of_loads + of_activity)).margin(0.02));
  CHECK(race.hangs_on[1].input == "activity");
  CHECK(race.hangs_on[1].total.value == Approx(of_activity / (of_loads + of_activity)).margin(0.02));
  CHECK(race.hangs_on[2].total.value == Approx(0.0).margin(1e-9));
}

TEST_CASE("the verdict says who wins, and in which weeks", "[models][review]") {
  const auto falling = [](double first) {
    return history_of([=](double progress, std::size_t) { return first * std::pow(0.1, progress); });
  };
  const auto sentence = [](const Race& race, HealingCourse kind) {
    return course_sentence(course_of(race, kind));
  };
  SECTION("the plate, though not without healing") {
    Construct construct = sure_construct(12.0);
    construct.healing->activity_factor = 1.2;
    const Race race = run_race(falling(430.0), construct, sure());
    REQUIRE(life_in_weeks(430.0) > 12.0);
    CHECK_THAT(race_verdict(race).front(), Catch::Matchers::StartsWith("The plate outlasts healing by a factor"));
    CHECK_THAT(sentence(race, HealingCourse::none),
               Catch::Matchers::StartsWith("The plate is likely to break in week") &&
                   Catch::Matchers::Contains("if the gap does not stiffen"));
  }
  SECTION("the plate breaks") {
    const Race race = run_race(constant(600.0), sure_construct(40.0), sure());
    REQUIRE(life_in_weeks(600.0) < 30.0);
    CHECK(course_of(race, HealingCourse::governed).breaks_before_union == 1.0);
    CHECK_THAT(race_verdict(race).front(),
               Catch::Matchers::StartsWith("The plate is likely to break before union is due, in week"));
  }
  SECTION("either may") {
    Construct construct = sure_construct(life_in_weeks(450.0));
    construct.loads[0].spread = 0.2;
    const Race race = run_race(constant(450.0), construct, sure());
    const auto& governed = course_of(race, HealingCourse::governed);
    // It breaks when the load is above its mean: of a lognormal's samples a little less than half are.
    const double deviation = std::sqrt(std::log1p(0.04));
    const double above = boost::math::cdf(boost::math::normal(), -0.5 * deviation);
    CHECK(governed.breaks_before_union == Approx(above).margin(0.01));
    CHECK_THAT(race_verdict(race).front(),
               Catch::Matchers::StartsWith("The plate breaks before union is due in 46 %"));
  }
  SECTION("no stress amplitude") {
    const Race race = run_race(constant(50.0), sure_construct(), sure());
    CHECK_FALSE(race.courses[2].breaks_low);
    CHECK(course_sentence(race.courses[2]) ==
          "Even if the gap never stiffened, the plate would last five years in 100 % of the samples.");
  }
}

TEST_CASE("a gap that strain holds back is said to be", "[models][review]") {
  auto history = constant(100.0);
  history.courses[1].gap.back().united = 0.6;
  history.courses[1].gap.back().held = 0.3;
  history.courses[1].gap.back().claes.fibrous = 0.25;
  history.courses[1].united = {1.0, 0.6, 0.2};
  const Race race = run_race(history, sure_construct(), sure());
  CHECK(race.courses[1].united.middle == Approx(0.6));
  CHECK(race.at_the_end.held == 0.3);
  CHECK_THAT(union_sentence(race).value(),
             Catch::Matchers::Contains("only 60 % of the gap's area unites in time: 30 % of it stays "
                                       "what it is") &&
                 Catch::Matchers::Contains("10 % is late") && Catch::Matchers::Contains("25 % stays fibrous"));
}

TEST_CASE("a race carries what it took for granted, and its last sentence says just that", "[models][review]") {
  RaceAssumptions assumptions = sure();
  assumptions.corrosion_from = 0.7;
  assumptions.stress_error = 0.08;
  Construct construct = sure_construct();
  construct.healing->activity_factor = 1.5;
  Race race = run_race(constant(100.0), construct, assumptions);
  CHECK(race.assumptions.corrosion_from == 0.7);
  CHECK(race.cycles_a_day == *construct.loads[0].cycles_per_day);
  CHECK(race.activity_factor == 1.5);
  CHECK_THAT(race_verdict(race).back(),
             Catch::Matchers::Contains("leave 70 to 100 % of") && Catch::Matchers::Contains("is off by 8 %"));
  race.cycles_a_day = 1234.0;
  CHECK_THAT(race_verdict(race).back(), Catch::Matchers::Contains("1234 load cycles a day"));
}

TEST_CASE("a construct compared with itself is within the uncertainty", "[models][review]") {
  Construct construct = sure_construct();
  construct.loads[0].spread = 0.25;
  construct.healing->weeks_to = 16.0;
  RaceAssumptions assumptions = sure(1024);
  assumptions.corrosion_from = 0.8;
  SECTION("without errors of the model to the last digit") {
    for (const auto& comparison :
         compare_races(constant(300.0), construct, constant(300.0), construct, assumptions)) {
      CHECK(comparison.ratio.low == 1.0);
      CHECK(comparison.ratio.high == 1.0);
      CHECK(comparison.hangs_on.empty());
      CHECK_THAT(comparison_sentence(comparison, "one", "other"),
                 Catch::Matchers::Contains("within the uncertainty"));
    }
  }
  SECTION("with each one's own error up to that") {
    assumptions.stress_error = 0.05;
    const auto comparison =
        compare_races(constant(300.0), construct, constant(300.0), construct, assumptions).front();
    CHECK(comparison.ratio.middle == Approx(1.0).margin(0.03));
    CHECK(comparison.ratio.low * comparison.ratio.high == Approx(1.0).margin(0.1));
    CHECK(comparison.first_outlasts == Approx(0.5).margin(0.02));
    CHECK_THAT(comparison_sentence(comparison, "one", "other"),
               Catch::Matchers::Contains("within the uncertainty"));
    // Each error alone is half of it.
    CHECK_THAT(comparison.hangs_on[0].input, Catch::Matchers::StartsWith("error of the model's stress"));
    CHECK(comparison.hangs_on[0].first.value == Approx(0.5).margin(0.1));
    CHECK(comparison.hangs_on[2].total.value < 0.05);
  }
}

TEST_CASE("what two constructs share cancels out of their ratio", "[models][review]") {
  Construct first = sure_construct(), second = sure_construct();
  first.name = "thick plate";
  second.name = "thin plate";
  for (Construct* construct : {&first, &second}) {
    construct->loads[0].spread = 0.25;
    construct->healing->activity_factor = 2.0;
  }
  const auto comparison = compare_races(constant(250.0), first, constant(275.0), second, sure(256)).front();
  const double ratio = std::pow(1.1, -1.0 / exponent());
  CHECK(comparison.ratio.low == Approx(ratio).epsilon(1e-6));
  CHECK(comparison.ratio.high == Approx(ratio).epsilon(1e-6));
  CHECK(comparison.first_outlasts == 1.0);
  CHECK_THAT(
      comparison_sentence(comparison, first.name, second.name),
      Catch::Matchers::Contains("\"thick plate\" (plates alone) outlast those of \"thin plate\" by a factor " +
                                factor_text(ratio)));
}

TEST_CASE("two metals have a strength each", "[models][review]") {
  Construct first = sure_construct(), second = sure_construct();
  only(second.plates).material.name = "another metal";
  for (Construct* construct : {&first, &second})
    only(construct->plates).material.fatigue_strength =
        FatigueStrength{0.9 * strength * mpa, strength * mpa, 1.1 * strength * mpa, "made up"};
  const auto comparison = compare_races(constant(300.0), first, constant(300.0), second, sure()).front();
  CHECK(comparison.ratio.high > 1.5);
  CHECK_THAT(comparison.hangs_on[0].input, Catch::Matchers::StartsWith("fatigue strength in "));
}

TEST_CASE("a race has the same bits in every run", "[models][review]") {
  Construct construct = sure_construct();
  construct.loads[0].spread = 0.25;
  construct.healing->weeks_to = 16.0;
  const Race one = run_race(constant(300.0), construct), other = run_race(constant(300.0), construct);
  for (std::size_t c = 0; c < one.courses.size(); ++c) {
    CHECK(one.courses[c].life_factor.low == other.courses[c].life_factor.low);
    CHECK(one.courses[c].damage.back().high == other.courses[c].damage.back().high);
  }
  for (std::size_t k = 0; k < one.hangs_on.size(); ++k)
    CHECK(one.hangs_on[k].total.high == other.hangs_on[k].total.high);
  CHECK(race_verdict(one) == race_verdict(other));
}

}  // namespace gapstrain
