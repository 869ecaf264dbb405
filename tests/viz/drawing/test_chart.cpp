#include "viz/drawing/chart.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace gapstrain::viz;

TEST_CASE("a round axis covers the values and zero in no more steps than allowed", "[viz][chart]") {
  const double limits[][2] = {{-97.3, 24.1}, {3.0, 11.0}, {-0.0071, -0.002}, {0.0, 1130.0}, {-19.9, 20.1}};
  for (const auto& [low, high] : limits) {
    const Axis axis = round_axis(low, high, 5);
    CAPTURE(low, high, axis.low, axis.high, axis.step);
    CHECK(axis.low <= std::min(low, 0.0));
    CHECK(axis.high >= std::max(high, 0.0));
    CHECK((axis.high - axis.low) / axis.step <= 5.0 + 1e-9);
    CHECK(std::remainder(axis.low, axis.step) == Approx(0.0).margin(1e-9 * axis.step));
    CHECK(std::remainder(axis.high, axis.step) == Approx(0.0).margin(1e-9 * axis.step));
  }
}

TEST_CASE("an axis over nothing but zero has a width", "[viz][chart]") {
  const Axis axis = round_axis(0.0, 0.0, 5);
  CHECK(axis.low < 0.0);
  CHECK(axis.high > 0.0);
}

TEST_CASE("labels that would touch are moved apart and stay within the limits in order", "[viz][chart]") {
  const auto places = spread({52.0, 50.0, 51.0, 90.0}, 10.0, 0.0, 95.0);
  CHECK(places[1] >= 0.0);
  CHECK(places[2] - places[1] >= 10.0 - 1e-12);
  CHECK(places[0] - places[2] >= 10.0 - 1e-12);
  CHECK(places[3] - places[0] >= 10.0 - 1e-12);
  CHECK(places[3] <= 95.0);
  CHECK(places[3] == 90.0);
  CHECK(spread({3.0, 40.0}, 10.0, 0.0, 95.0) == std::vector<double>{3.0, 40.0});
}
