#include "viz/drawing/ticks.h"

#include <catch2/catch.hpp>

using namespace gapstrain::viz;

TEST_CASE("a step is the smallest round number that needs no more parts than allowed", "[viz][ticks]") {
  CHECK(round_step(7.0, 7) == Approx(1.0));
  CHECK(round_step(7.1, 7) == Approx(2.0));
  CHECK(round_step(324.0, 8) == Approx(50.0));
  CHECK(round_step(0.0093, 4) == Approx(0.005));
  CHECK(round_step(80.0, 8) == Approx(10.0));
}

TEST_CASE("a round number below a value is the largest there is", "[viz][ticks]") {
  CHECK(round_below(19.9) == Approx(10.0));
  CHECK(round_below(20.0) == Approx(20.0));
  CHECK(round_below(0.087) == Approx(0.05));
  CHECK(round_below(1.0) == Approx(1.0));
}

TEST_CASE("ticks are the multiples of the step within the limits, limits included", "[viz][ticks]") {
  const auto ticks = ticks_within(-0.31, 0.6, 0.2);
  REQUIRE(ticks.size() == 5);
  CHECK(ticks.front() == Approx(-0.2));
  CHECK(ticks.back() == Approx(0.6));
}

TEST_CASE("a tick is written with the decimals of its step and zero without a sign", "[viz][ticks]") {
  CHECK(tick_text(0.6, 0.2) == "0.6");
  CHECK(tick_text(150.0, 50.0) == "150");
  CHECK(tick_text(0.035, 0.005) == "0.035");
  CHECK(tick_text(-1e-17, 0.1) == "0.0");
  CHECK(tick_text(-2.0, 1.0) == "\u22122");  // the true minus sign
}
