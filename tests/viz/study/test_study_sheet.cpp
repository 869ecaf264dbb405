#include "viz/study/study_sheet.h"

#include "tests/framework/numbers.h"
#include "viz/study/study_limits.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <stdexcept>

using namespace gapstrain::viz;
using StudyRange = gapstrain::viz::Range;  // models have a Range, too

using gapstrain::tests::missing;

namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();

StudyRange over(const std::vector<double>& values, bool logarithmic = false) {
  StudyRange range{logarithmic};
  range.add(values);
  return range;
}

}  // namespace

TEST_CASE("an axis of a study covers its values and has ticks, whatever they are", "[viz][study]") {
  const std::vector<std::vector<double>> all{{10.0, 130.0}, {300.0, 900.0}, {412.0},         {0.0},
                                             {-5.0, 520.0}, {-9.0, -2.0},   {1e-9, 3e-9},    {2e9, 7e11},
                                             {99.9, 100.1}, {-7.0},         {1000.0, 1001.0}};
  for (const auto& values : all)
    for (const double room : {0.0, 0.03}) {
      const Axis axis = over(values).axis(8, room);
      CAPTURE(values.front(), values.back(), axis.low, axis.high, axis.step);
      for (const double value : values) {
        CHECK(axis.share(value) >= 0.0);
        CHECK(axis.share(value) <= 1.0);
      }
      CHECK(axis.ticks().size() >= 2);
      CHECK(axis.ticks().size() <= 10);
    }
}

TEST_CASE("zero is on an axis that would otherwise begin near it", "[viz][study]") {
  CHECK(over({10.0, 130.0}).axis(8).low == 0.0);
  CHECK(over({-130.0, -10.0}).axis(8).high == 0.0);
  CHECK(over({300.0, 900.0}).axis(8).low > 0.0);
  CHECK(over({10.0, 130.0}).tight_axis(13).low > 0.0);
}

TEST_CASE("a logarithmic axis gives equal ratios equal room and leaves out what is not above zero",
          "[viz][study]") {
  const StudyRange range = over({0.03, 4.0, 700.0, 0.0, -2.0, missing}, true);
  CHECK(range.left_out == 3);
  const Axis axis = range.axis(8);
  CHECK(axis.low <= 0.03);
  CHECK(axis.high >= 700.0);
  CHECK(axis.share(10.0) - axis.share(1.0) == Approx(axis.share(500.0) - axis.share(50.0)));
  for (const double tick : axis.ticks()) {
    const double digit = tick / std::pow(10.0, std::floor(std::log10(tick) + 1e-9));
    CHECK((digit == Approx(1.0) || digit == Approx(2.0) || digit == Approx(5.0)));
  }
  for (const auto& values : {std::vector<double>{3.0}, {1.0, 1e12}, {520.0, 900.0}}) {
    const auto ticks = over(values, true).axis(8).ticks();
    CHECK(ticks.size() >= 2);
    CHECK(ticks.size() <= 10);
  }
}

TEST_CASE("a limit stretches the axis when it is near, and else is named at the edge", "[viz][study]") {
  const std::vector<Limit> limits{{"yield", 690.0, 690.0}, {"far", 1e6, infinite}};
  StudyRange range = over({200.0, 450.0});
  range.add_limits(limits);
  CHECK(range.high == 690.0);
  CHECK(range.low == 200.0);
  const Axis axis = range.axis(8);
  const auto names = limit_names(limits, axis);
  REQUIRE(names.size() == 2);
  CHECK(names[0].text == "yield: 690");
  CHECK(names[0].value == Approx(690.0));
  CHECK(names[1].text == "far: above 1000000, beyond the axis");
  CHECK(names[1].value == Approx(axis.high));
  CHECK(limit_names({{"window", 2.0, 10.0}}, {0.0, 20.0, 5.0})[0].text == "window: 2 to 10");
  CHECK(limit_names({{"window", 2.0, 10.0}}, {0.0, 20.0, 5.0})[0].value == Approx(6.0));
  CHECK(limit_names({{"window", -infinite, 10.0}}, {0.0, 20.0, 5.0})[0].text == "window: up to 10");

  StudyRange decades = over({2.0, 10.0}, true);
  decades.add_limits({{"near", 30.0, 30.0}, {"far", 1e-9, 1e-9}, {"never", -3.0, -3.0}});
  CHECK(decades.low == 2.0);
  CHECK(decades.high == 30.0);
  CHECK(decades.left_out == 0);
}

TEST_CASE("a subtitle says what is missing from a chart and nothing else", "[viz][study]") {
  CHECK(with_remarks("As planned", {first_of(8, 8, "curves"), left_out_remark(0, "point")}) == "As planned");
  CHECK(with_remarks("As planned", {first_of(8, 12, "curves"), left_out_remark(2, "point")}) ==
        "As planned. First 8 of 12 curves. 2 points without a value left out");
  CHECK(with_remarks("", {left_out_remark(1, "point")}) == "1 point without a value left out");
}

TEST_CASE("lists that belong together and differ are refused by name", "[viz][study]") {
  CHECK_NOTHROW(check_same_length(3, 3, "x and y"));
  CHECK_THROWS_WITH(check_same_length(3, 4, "x and y"), "x and y differ in length: 3 and 4");
}

TEST_CASE("no two series of a chart look alike, in black and white neither", "[viz][study]") {
  for (std::size_t a = 0; a < most_series; ++a)
    for (std::size_t b = 0; b < a; ++b) {
      const CurveStyle one = series_style(a, 30), other = series_style(b, 30);
      CHECK((one.marker != other.marker || (one.hollow != other.hollow && one.dash != other.dash)));
    }
}
