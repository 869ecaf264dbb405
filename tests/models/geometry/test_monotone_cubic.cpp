#include "models/geometry/monotone_cubic.h"

#include <catch2/catch.hpp>

#include <stdexcept>

using gapstrain::models::MonotoneCubic;
using EndSlope = MonotoneCubic::EndSlope;

namespace {
// Fritsch and Carlson's own example, RPN 14 (their table 1): rises steeply after a flat start.
const std::vector<double> knots{7.99, 8.09, 8.19, 8.7, 9.2, 10.0, 12.0, 15.0, 20.0};
const std::vector<double> values{0.0,      2.76429e-5, 4.37498e-2, 0.169183, 0.469428,
                                 0.943740, 0.998636,   0.999919,   0.999994};
}  // namespace

TEST_CASE("the interpolant goes through its data and rises wherever they rise", "[models][parts]") {
  const MonotoneCubic curve(knots, values, EndSlope::secant, EndSlope::secant);
  for (std::size_t i = 0; i < knots.size(); ++i) CHECK(curve.value(knots[i]) == Approx(values[i]).margin(1e-15));
  double before = -1.0;
  for (int i = 0; i <= 5000; ++i) {
    const double now = curve.value(7.99 + (20.0 - 7.99) * i / 5000);
    REQUIRE(now >= before - 1e-15);
    before = now;
  }
}

TEST_CASE("the interpolant has its extremes at knots", "[models][parts]") {
  const MonotoneCubic curve({0.0, 1.3, 2.9, 3.4}, {5.0, 2.1, 2.1, 4.4}, EndSlope::secant, EndSlope::secant);
  for (int i = 0; i <= 340; ++i) CHECK(curve.value(0.01 * i) >= 2.1);
  CHECK(curve.slope(1.3) == 0.0);
  CHECK(curve.value(2.0) == 2.1);
}

TEST_CASE("slope and second derivative are those of the value", "[models][parts]") {
  const MonotoneCubic curve({0.0, 1.3, 2.9, 3.4}, {5.0, 2.1, 3.3, 4.4}, EndSlope::level, EndSlope::secant);
  for (const double x : {0.2, 0.9, 1.31, 2.2, 2.95, 3.3}) {
    CAPTURE(x);
    CHECK(curve.slope(x) == Approx((curve.value(x + 1e-5) - curve.value(x - 1e-5)) / 2e-5).epsilon(1e-8));
    CHECK(curve.second_derivative(x) ==
          Approx((curve.slope(x + 1e-5) - curve.slope(x - 1e-5)) / 2e-5).epsilon(1e-7));
  }
  CHECK(curve.slope(0.0) == 0.0);
  CHECK(curve.slope(3.4) == Approx((4.4 - 3.3) / 0.5));
}

TEST_CASE("the interpolant is once continuously differentiable at inner knots", "[models][parts]") {
  const MonotoneCubic curve(knots, values, EndSlope::secant, EndSlope::secant);
  for (std::size_t i = 1; i + 1 < knots.size(); ++i)
    CHECK(curve.slope(knots[i] - 1e-9) == Approx(curve.slope(knots[i] + 1e-9)).margin(1e-6));
}

TEST_CASE("the interpolant is constant beyond its data", "[models][parts]") {
  const MonotoneCubic one({4.0}, {7.0}, EndSlope::level, EndSlope::level);
  CHECK(one.value(-3.0) == 7.0);
  CHECK(one.value(9.0) == 7.0);
  const MonotoneCubic two({1.0, 2.0}, {3.0, 8.0}, EndSlope::secant, EndSlope::secant);
  CHECK(two.value(0.0) == 3.0);
  CHECK(two.value(1.25) == 4.25);  // two data make a straight line
  CHECK(two.value(3.0) == 8.0);
  CHECK(two.slope(3.0) == 0.0);
}

TEST_CASE("an interpolant refuses data that do not make a curve", "[models][parts]") {
  const auto make = [](std::vector<double> x, std::vector<double> y) {
    return MonotoneCubic(std::move(x), std::move(y), EndSlope::level, EndSlope::level);
  };
  CHECK_THROWS_AS(make({}, {}), std::invalid_argument);
  CHECK_THROWS_AS(make({1.0, 2.0}, {1.0}), std::invalid_argument);
  CHECK_THROWS_AS(make({1.0, 1.0}, {1.0, 2.0}), std::invalid_argument);
}
