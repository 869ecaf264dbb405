// Parts of loads that are in doubt each by itself: stress against the same loads entered so, the race against
// closed forms.
#include "models/parts/load_parts.h"
#include "models/preparation/prepare_bodies.h"
#include "models/race/course_stress.h"
#include "models/race/race.h"
#include "models/stress/fatigue.h"
#include "tests/models/constructs.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gapstrain {

using namespace models;  // NOLINT: this file is nothing but the race

namespace {

Metal raced_metal(Metal metal) {
  metal.ultimate_strength = 930.0 * mpa;
  metal.fatigue_strength = FatigueStrength{380.0 * mpa, 380.0 * mpa, 380.0 * mpa, "made up for tests"};
  return metal;
}

Healing some_healing() {
  Healing healing;
  healing.weeks_from = healing.weeks_to = 10.0;
  healing.at_first = *find_tissue("granulation-tissue");
  healing.at_union = *find_tissue("mature-woven-bone");
  healing.activity_factor = 1.0;
  return healing;
}

// One load of all parts, whose bending comes of its line's offset as well: balls sit elsewhere for each size of
// it.
Construct twisted_tube() {
  Construct construct = tests::plated_tube();
  construct.mesh.refinement = 0.5;
  only(construct.plates).material = raced_metal(only(construct.plates).material);
  for (auto& screw : construct.screws) screw.material = raced_metal(screw.material);
  LoadCase load;
  load.name = "walk";
  load.axial_compression = 60.0 * newton;
  load.ball_offset_y = 2.0 * mm;
  load.ball_offset_z = -6.0 * mm;
  load.bending_y = 120.0 * newton_mm;
  load.bending_z = 120.0 * newton_mm;
  load.torsion = 400.0 * newton_mm;
  load.cycles_per_day = 3000.0;
  construct.loads = {load};
  construct.healing = some_healing();
  return construct;
}

const std::shared_ptr<const PreparedBodies>& twisted_bodies() {
  static const auto bodies = prepare_bodies(twisted_tube(), twisted_tube().screws);
  return bodies;
}

Construct with_bands(Construct construct) {
  construct.loads[0].axial_band = {0.6, 1.5};
  construct.loads[0].bending_band = {0.5, 2.0};
  construct.loads[0].torsion_band = {0.4, 2.5};
  return construct;
}

const StressHistory::Course& part_course(const StressHistory& history, HealingCourse kind) {
  return *std::find_if(history.courses.begin(), history.courses.end(),
                       [&](const auto& course) { return course.course == kind; });
}

bool is_same_place(const HotPlace& one, const HotPlace& other) {
  return one.screw == other.screw && one.notch == other.notch && one.along == other.along &&
         one.across == other.across && one.face == other.face;
}

// Largest difference of amplitudes over the largest, at places that both histories follow.
double apart(const StressHistory& sampled, const StressHistory& entered, HealingCourse kind,
             const PartFactors& parts, std::size_t& compared) {
  const CourseStress one(sampled, part_course(sampled, kind)), other(entered, part_course(entered, kind));
  double largest = 0.0, difference = 0.0;
  compared = 0;
  for (std::size_t moment = 0; moment < one.progress().size(); ++moment) {
    const auto found = one.at(moment, 0, LoadSize{1.1, parts}), wanted = other.at(moment, 0, 1.1);
    for (std::size_t k = 0; k < found.size(); ++k)
      for (std::size_t j = 0; j < wanted.size(); ++j) {
        if (!is_same_place(sampled.places[k], entered.places[j])) continue;
        ++compared;
        largest = std::max(largest, wanted[j].amplitude.value());
        difference = std::max(difference, std::abs((found[k].amplitude - wanted[j].amplitude).value()));
        CHECK(std::abs((found[k].mean - wanted[j].mean).value()) <=
              3.0 * std::abs((found[k].amplitude - wanted[j].amplitude).value()) + 1e-6);
      }
  }
  return difference / largest;
}

Construct entered_with(const PartFactors& parts) {
  Construct construct = twisted_tube();
  for (const LoadPart part : load_parts)
    construct.loads[0] = with_part(construct.loads[0], part, parts[index_of(part)]);
  return construct;
}

// A plate sheared at one place: amplitude, without a mean, in proportion to the torsion alone.
constexpr double torsions_a_day = 3000.0;

Construct sheared() {
  Construct construct;
  construct.name = "made up";
  only(construct.plates).material = raced_metal({});
  LoadCase load;
  load.name = "walk";
  load.torsion = 1.0 * newton_mm;
  load.cycles_per_day = torsions_a_day;
  load.spread = 0.0;
  construct.loads = {load};
  construct.healing = some_healing();
  return construct;
}

StressHistory sheared_history(double amplitude, const PartBand& band) {
  StressHistory history;
  history.progress = {0.0, 0.5, 1.0};
  history.load_factors = {0.5, 1.0, 2.0};
  history.loads = {0};
  history.places.resize(1);
  const bool in_doubt = is_open(band);
  if (in_doubt) {
    history.sampled_parts = {LoadPart::torsion};
    history.bands.emplace_back()[index_of(LoadPart::torsion)] = band;
    history.at_rest.plate = Eigen::Matrix3Xd::Zero(3, 1);
  }
  const auto shear = [&](double times) {
    return PlaceForces{Eigen::Vector3d(0.0, 0.0, 2.0 * times * amplitude / std::numbers::sqrt3), {}};
  };
  for (const auto kind : {HealingCourse::steady, HealingCourse::governed, HealingCourse::none}) {
    StressHistory::Course course;
    course.course = kind;
    for (std::size_t moment = 0; moment < history.progress.size(); ++moment) {
      course.gap.emplace_back();
      auto& cycles = course.cycles.emplace_back();
      if (in_doubt) course.parts.emplace_back();
      for (const double factor : history.load_factors) {
        cycles.push_back({{{factor * amplitude * mpa, 0.0 * mpa}}});
        if (!in_doubt) continue;
        PartStates states;
        states.entered = shear(factor);
        states.ends[index_of(LoadPart::torsion)] = {shear(factor * band.low), shear(factor * band.high)};
        course.parts.back().push_back({states});
      }
    }
    course.united.assign(history.load_factors.size(), 0.0);
    history.courses.push_back(course);
  }
  return history;
}

double life_when_sheared(double amplitude) {
  return cycles_to_failure(fatigue_line(930.0 * mpa, 380.0 * mpa), amplitude * mpa) / (7.0 * torsions_a_day);
}

RaceAssumptions nothing_else(Eigen::Index points = 1024) { return {1.0, 1.0, 0.0, points}; }

}  // namespace

TEST_CASE("parts of a load of any size strain the construct as the same load entered so", "[models][review]") {
  const StressHistory sampled = follow_healing(twisted_bodies(), with_bands(twisted_tube()));
  REQUIRE(sampled.sampled_parts.size() == 3);
  for (const PartFactors parts : {PartFactors{0.8, 1.7, 2.2}, {1.4, 0.6, 0.5}, {0.6, 2.0, 1.0}}) {
    CAPTURE(parts[0], parts[1], parts[2]);
    const StressHistory entered = follow_healing(twisted_bodies(), entered_with(parts));
    std::size_t compared = 0;
    CHECK(apart(sampled, entered, HealingCourse::steady, parts, compared) < 1e-8);
    CHECK(compared >= sampled.progress.size() * (twisted_tube().screws.size() + 1));
    CHECK(apart(sampled, entered, HealingCourse::none, parts, compared) < 1e-8);
  }
}

TEST_CASE("torsion shears the gap and does not hold its healing up", "[models][review]") {
  const StressHistory sampled = follow_healing(twisted_bodies(), with_bands(twisted_tube()));
  const auto& ends = sampled.strain.ends;
  CHECK(ends[index_of(LoadPart::torsion)].high == Approx(1.0).margin(0.1));
  CHECK(ends[index_of(LoadPart::bending)].high > 1.2);
  CHECK(ends[index_of(LoadPart::bending)].low < 0.9);
}

TEST_CASE("a load without bands, or with bands of no width, is followed and raced as before", "[models][review]") {
  Construct narrow = twisted_tube();
  narrow.loads[0].torsion_band = {1.0, 1.0};
  const StressHistory history = follow_healing(twisted_bodies(), narrow),
                      before = follow_healing(twisted_bodies(), twisted_tube());
  CHECK(history.sampled_parts.empty());
  CHECK(history.courses[0].parts.empty());
  const Race race = run_race(history, narrow, nothing_else(64)),
             as_before = run_race(before, twisted_tube(), nothing_else(64));
  CHECK(race.inputs.size() == 6);
  for (std::size_t c = 0; c < race.courses.size(); ++c) {
    CHECK(race.courses[c].life_factor.low == as_before.courses[c].life_factor.low);
    CHECK(race.courses[c].life_factor.high == as_before.courses[c].life_factor.high);
  }
}

TEST_CASE("a band of the only part carries its percentiles through to the life", "[models][review]") {
  const PartBand band{0.5, 2.0};
  const double b = fatigue_line(930.0 * mpa, 380.0 * mpa).b;
  const Race race = run_race(sheared_history(300.0, band), sheared(), nothing_else());
  const double sure_life = life_when_sheared(300.0) / 10.0;
  for (const RaceCourse& course : race.courses) {
    CHECK(course.life_factor.middle == Approx(sure_life).epsilon(5e-3));
    CHECK(course.life_factor.low == Approx(sure_life * std::pow(2.0, 0.9 / b)).epsilon(0.02));
    CHECK(course.life_factor.high == Approx(sure_life * std::pow(2.0, -0.9 / b)).epsilon(0.02));
  }
  REQUIRE(race.inputs.size() == 7);
  CHECK(race.inputs.back().name == "torsion of the loads");
  CHECK(race.inputs.back().spread.low == Approx(std::pow(2.0, -0.9)));
  CHECK(race.inputs.back().spread.high == Approx(std::pow(2.0, 0.9)));
  REQUIRE_FALSE(race.hangs_on.empty());
  CHECK(race.hangs_on[0].input == "torsion of the loads");
  CHECK(race.hangs_on[0].first.value == Approx(1.0).margin(0.02));
  CHECK(race.hangs_on_loads.value() == Approx(1.0).margin(0.02));
  CHECK_FALSE(run_race(sheared_history(300.0, {}), sheared(), nothing_else(64)).hangs_on_loads);
}

TEST_CASE("as many samples break as sizes of the part that break", "[models][review]") {
  // Just holds as entered; breaks from x on, above it within the band for 1 - ln x / ln 2 of its upper half.
  const double b = fatigue_line(930.0 * mpa, 380.0 * mpa).b;
  const double amplitude = 300.0, x = std::pow(life_when_sheared(amplitude) / 10.0, -b);
  REQUIRE(x > 1.05);
  REQUIRE(x < 1.9);
  const auto share = [&](const PartBand& band) {
    return run_race(sheared_history(amplitude, band), sheared(), nothing_else())
        .courses.back()
        .breaks_before_union;
  };
  CHECK(share({1.0, 1.0}) == 0.0);
  CHECK(share({0.2, 1.0}) == 0.0);
  CHECK(share({0.5, 2.0}) == Approx(0.5 * (1.0 - std::log(x) / std::log(2.0))).margin(0.01));
  CHECK(share({0.5, 4.0}) > share({0.5, 2.0}));
}

TEST_CASE("a protected time spares the implant just what does not come in it", "[models][review]") {
  Construct construct = sheared();
  const StressHistory steady = sheared_history(420.0, {});
  const auto damage = [&](const StressHistory& history) {
    return run_race(history, construct, nothing_else(64)).courses.front().damage.back().middle;
  };
  const double full = damage(steady);
  CHECK(full == Approx(10.0 / life_when_sheared(420.0)));
  const auto tested = [&] { return run_race(steady, construct, nothing_else(64)).courses.front(); };
  CHECK(tested().tested_factor.value() == Approx(1e7 / (7.0 * torsions_a_day * 10.0)));
  CHECK(tested().tested_weeks.value() == Approx(1e7 / (7.0 * torsions_a_day)));
  construct.healing->protection = {{2.5, 0.2, {}}, {5.0, 0.6, {}}};
  CHECK(tested().tested_factor.value() == Approx(1e7 / (7.0 * torsions_a_day * (0.2 * 2.5 + 0.6 * 2.5 + 5.0))));
  CHECK(damage(steady) == Approx(full * (0.2 * 2.5 + 0.6 * 2.5 + 5.0) / 10.0).epsilon(1e-12));
  construct.healing->protection = {{4.0, 1.0, {"walk"}}};
  CHECK(damage(steady) == Approx(full * 6.0 / 10.0).epsilon(1e-12));
  CHECK(full_weeks(*construct.healing, "walk", 0.0, 10.0) == Approx(6.0));
  CHECK(full_weeks(*construct.healing, "trot", 3.0, 10.0) == Approx(7.0));
  construct.healing->protection = {{4.0, 1.0, {}}};  // all comes
  CHECK(damage(steady) == full);
  // Stress that falls in equal ratios: by many small steps.
  StressHistory falling = steady;
  for (std::size_t moment = 0; moment < falling.progress.size(); ++moment)
    for (auto& loads : falling.courses.front().cycles[moment])
      loads.front().front().amplitude *= std::pow(0.2, falling.progress[moment]);
  construct.healing->protection = {{1.0, 0.1, {}}, {7.0, 0.5, {}}};
  constexpr int steps = 200000;
  double wanted = 0.0;
  for (int step = 0; step < steps; ++step) {
    const double progress = (step + 0.5) / steps, week = 10.0 * progress;
    const double share = week < 1.0 ? 0.1 : week < 7.0 ? 0.5 : 1.0;
    wanted += share * 10.0 / steps / life_when_sheared(420.0 * std::pow(0.2, progress));
  }
  CHECK(damage(falling) == Approx(wanted).epsilon(1e-4));
}

TEST_CASE("a part in doubt cancels out of the ratio of two constructs, and is sampled where one alone has it",
          "[models][review]") {
  const PartBand band{0.5, 2.0};
  Construct first = sheared(), second = sheared();
  first.name = "one";
  second.name = "other";
  const double ratio = std::pow(1.1, -1.0 / fatigue_line(930.0 * mpa, 380.0 * mpa).b);
  const auto both =
      compare_races(sheared_history(300.0, band), first, sheared_history(330.0, band), second, nothing_else(256))
          .front();
  CHECK(both.ratio.low == Approx(ratio).epsilon(1e-6));
  CHECK(both.ratio.high == Approx(ratio).epsilon(1e-6));
  const auto one =
      compare_races(sheared_history(300.0, {}), first, sheared_history(330.0, band), second, nothing_else(256))
          .front();
  CHECK(one.ratio.low < 0.9 * ratio);
  CHECK(one.ratio.high > 1.1 * ratio);
}

}  // namespace gapstrain
