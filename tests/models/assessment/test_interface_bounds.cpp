// Whether a verdict survives both bounds of how bone holds screws.
#include "models/assessment/comparison.h"
#include "models/assessment/interface_bounds.h"
#include "models/assessment/preference.h"
#include "models/words/interface_words.h"
#include "models/words/preference_words.h"
#include "models/words/state_words.h"

#include <catch2/catch.hpp>

using namespace gapstrain::models;

namespace {

FirstDay day(double factor) {
  const Margin least{MarginKind::plate_yield, "trot", factor, ""};
  return {factor < 1.0 ? Standing::fails : Standing::holds, least, 0.01};
}

InterfaceBounds bounds(const FirstDay& bonded, const FirstDay& soft) {
  return {bonded_interface, {bonded_interface, bonded}, {soft_interface, soft}};
}

const FirstDay unknown{Standing::not_trusted};

AssessedConstruct assessed(double bonded, double soft) {
  AssessedConstruct one;
  one.analysis.findings.figures.fragments = {{2, 4}, {2, 4}};
  one.assessment.margins = {*day(bonded).least};
  if (bonded < 1.0) one.assessment.state.fails = {{one.assessment.margins.front()}};
  one.assessment.state.interface = bounds(day(bonded), day(soft));
  return one;
}

}  // namespace

TEST_CASE("a verdict holds, fails or hangs on it at both bounds of screws in bone", "[models][review]") {
  CHECK(bounds(day(1.4), day(1.1)).verdict() == BoundsVerdict::holds_at_both);
  CHECK(bounds(day(1.4), day(0.9)).verdict() == BoundsVerdict::hangs_on_it);
  CHECK(bounds(day(0.9), day(1.1)).verdict() == BoundsVerdict::hangs_on_it);
  CHECK(bounds(day(0.9), day(0.8)).verdict() == BoundsVerdict::fails_at_both);
  CHECK(bounds(day(1.4), unknown).verdict() == BoundsVerdict::unknown);
  CHECK(*bounds(day(1.4), day(1.1)).least_margin() == 1.1);
  CHECK(*bounds(day(0.9), day(1.1)).least_margin() == 0.9);
  CHECK_FALSE(bounds(day(1.4), unknown).least_margin());
  CHECK(bounds(day(1.4), day(0.9)).warns(Standing::holds));
  CHECK(bounds(day(1.4), unknown).warns(Standing::holds));
  CHECK_FALSE(bounds(day(1.4), day(1.1)).warns(Standing::holds));
  CHECK_FALSE(bounds(day(0.9), day(0.8)).warns(Standing::fails));
}

TEST_CASE("bounds are asked for once each, and not where the construct is one itself", "[models][review]") {
  Construct construct;
  std::vector<double> asked;
  const auto first_day_of = [&](const Construct& other) {
    asked.push_back(other.screw_interface);
    return day(2.0 * other.screw_interface);
  };
  auto found = find_interface_bounds(construct, day(1.9), first_day_of);
  CHECK(asked == std::vector<double>{soft_interface});
  CHECK(found.bonded.day.least->factor == 1.9);
  CHECK(found.soft.day.least->factor == 1.0);
  CHECK(found.taken == bonded_interface);

  asked.clear();
  construct.screw_interface = mean_interface;
  found = find_interface_bounds(construct, day(1.5), first_day_of);
  CHECK(asked == std::vector<double>{bonded_interface, soft_interface});
  // Softer than the soft bound: it is the bound.
  asked.clear();
  construct.screw_interface = 0.3;
  found = find_interface_bounds(construct, day(0.7), first_day_of);
  CHECK(asked == std::vector<double>{bonded_interface});
  CHECK(found.soft.stiffness == 0.3);
  CHECK(found.soft.day.least->factor == 0.7);
}

TEST_CASE("each stage of a course of screws in bone is asked for once, where it is another one",
          "[models][review]") {
  Construct construct;
  construct.screw_interface = mean_interface;
  std::vector<double> asked;
  const auto first_day_of = [&](const Construct& other) {
    CHECK(other.interface_course.empty());
    asked.push_back(other.screw_interface);
    return day(2.0 * other.screw_interface);
  };
  CHECK(find_softening(construct, day(1.9), first_day_of).empty());
  construct.interface_course = {{4.0, mean_interface}, {8.0, 0.6}, {10.0, 0.6}, {12.0, 0.4}};
  const auto weeks = find_softening(construct, day(1.9), first_day_of);
  CHECK(asked == std::vector<double>{0.6, 0.4});
  REQUIRE(weeks.size() == 5);
  CHECK(weeks[0].week == 0.0);
  CHECK(weeks[1].bound.day.least->factor == 1.9);  // as on the first day, to the last bit
  CHECK(weeks[3].bound.day.least->factor == 1.2);
  const auto failure = failure_as_screws_soften(weeks);
  REQUIRE(failure);
  CHECK(failure->margin()->factor == 0.8);
  CHECK(failure->when.kind == FailureTime::Kind::as_screws_soften);
  CHECK(*failure->when.from == 12.0);
  CHECK(failure_time(failure->when) == "from week 12 on, as screws soften in bone");
  CHECK_FALSE(failure_as_screws_soften({weeks.begin(), weeks.end() - 1}));
  const std::string said = softening_sentence(weeks);
  CHECK(said.find("on the first day (0.84 of the bonded stiffness) holds, least margin 1.9") != std::string::npos);
  CHECK(said.find("in week 12 (0.4 of the bonded stiffness) FAILS, least margin 0.8") != std::string::npos);
  CHECK(said.find("no published course") != std::string::npos);
}

TEST_CASE("between the stages of its course an interface is on a straight line", "[models][parts]") {
  const std::vector<InterfaceStage> course = {{2.0, 0.8}, {6.0, 0.8}, {10.0, 0.4}};
  CHECK(interface_in_week(0.8, course, 1.0) == 0.8);  // without rounding
  CHECK(interface_in_week(1.0, course, 1.0) == Approx(0.9));
  CHECK(interface_in_week(1.0, course, 4.0) == 0.8);
  CHECK(interface_in_week(1.0, course, 9.0) == Approx(0.5));
  CHECK(interface_in_week(1.0, course, 50.0) == 0.4);
  CHECK(interface_in_week(0.7, {}, 3.0) == 0.7);
}

TEST_CASE("sentences name the bounds, their margins and what they come to", "[models][review]") {
  const std::string both = bounds_sentence(bounds(day(1.4), day(1.1)));
  CHECK(
      both ==
      "On the first day, screws bonded to bone, as taken here, a bound: holds, least margin 1.4 (plate, yield), "
      "gap "
      "strain up to 1 %; soft in bone (0.5 of the bonded stiffness): holds, least margin 1.1 (plate, yield), gap "
      "strain up to 1 %. So it holds at both bounds of screws in bone.");
  CHECK(soft_bound_warning(bounds(day(1.4), day(0.9))) ==
        "with screws soft in bone (0.5 of the bonded stiffness) plate, yield bears 0.9 of what it is asked, under "
        "\"trot\"");
  CHECK(soft_bound_warning(bounds(day(1.4), unknown)).find("not known") != std::string::npos);
}

TEST_CASE("constructs are compared by the lesser margin of both bounds, in either sense", "[models][review]") {
  const std::vector<Construct> constructs(2);
  const auto figure = [&](const std::vector<AssessedConstruct>& all) {
    const auto figures = compare(constructs, all).figures;
    const auto found = std::find_if(figures.begin(), figures.end(), [](const ComparedFigure& one) {
      return one.name == "least margin, screws bonded or soft";
    });
    REQUIRE(found != figures.end());
    return *found;
  };
  // The first is better bonded, the second at its worse bound.
  const auto survives = figure({assessed(1.8, 0.9), assessed(1.5, 1.4)});
  CHECK(*survives.values[0] == 0.9);
  CHECK(*survives.values[1] == 1.4);
  CHECK(survives.best() == 1);
  const auto other_way = figure({assessed(1.8, 1.7), assessed(1.5, 0.8)});
  CHECK(*other_way.values[1] == 0.8);
  CHECK(other_way.best() == 0);
  CHECK_FALSE(figure({assessed(1.5, 1.4), assessed(1.5, 1.45)}).best());
}

TEST_CASE("what is preferred says so where soft screws turn it", "[models][review]") {
  const std::vector<Construct> constructs(2);
  const std::vector<AssessedConstruct> all{assessed(1.8, 0.9), assessed(0.7, 0.6)};
  const auto preference = find_preference(all, compare(constructs, all));
  CHECK(preference.preferred == 0);
  const auto reasons = preference_reasons(preference, {"A", "B"});
  CHECK(reasons[0] == "\"B\" FAILS: plate, yield; it would bear 70 % of \"trot\".");
  CHECK(reasons[1] == "\"A\" holds: least margin 1.8, plate, yield, but with screws soft in bone it FAILS.");
}
