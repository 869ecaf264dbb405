#include "viz/drawing/colour.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace gapstrain::viz;

TEST_CASE("the colour scale grows lighter all the way, so a grey print keeps the order", "[viz][colour]") {
  double former = luminance(scale_colour(0.0));
  for (int k = 1; k <= 500; ++k) {
    const double next = luminance(scale_colour(k / 500.0));
    REQUIRE(next > former);
    former = next;
  }
  CHECK(luminance(scale_colour(0.0)) < 0.05);
  CHECK(luminance(scale_colour(1.0)) > 0.7);
}

TEST_CASE("the colour scale's lightness rises evenly", "[viz][colour]") {
  // Lightness of CIE 1976: L* = 116 Y^(1/3) - 16 above Y = 0.008856 (ISO/CIE 11664-4). Viridis was made even in a
  // newer colour space, so L* of it is only nearly even.
  const auto lightness = [](double share) { return 116.0 * std::cbrt(luminance(scale_colour(share))) - 16.0; };
  const double low = lightness(0.0), high = lightness(1.0);
  for (int k = 0; k <= 20; ++k) {
    const double share = k / 20.0;
    CHECK(lightness(share) == Approx(low + share * (high - low)).margin(4.0));
  }
}

TEST_CASE("values beyond the colour scale take the colour of its end", "[viz][colour]") {
  CHECK(luminance(scale_colour(-0.3)) == luminance(scale_colour(0.0)));
  CHECK(luminance(scale_colour(1.7)) == luminance(scale_colour(1.0)));
}

TEST_CASE("luminance knows white, black and the green share of sRGB", "[viz][colour]") {
  CHECK(luminance({1.0, 1.0, 1.0}) == Approx(1.0));
  CHECK(luminance({0.0, 0.0, 0.0}) == 0.0);
  CHECK(luminance({0.0, 1.0, 0.0}) == Approx(0.7152));  // ITU-R BT.709
}

TEST_CASE("no curve has the colour of what holds, fails or is not to be trusted", "[viz][colour]") {
  const auto apart = [](const Colour& a, const Colour& b) {
    return std::max({std::abs(a.red - b.red), std::abs(a.green - b.green), std::abs(a.blue - b.blue)});
  };
  for (const auto meaning : {Meaning::holds, Meaning::fails, Meaning::not_trusted})
    for (const auto& curve : curve_colours) CHECK(apart(colour_of(meaning), curve) > 0.2);
  CHECK(apart(colour_of(Meaning::holds), colour_of(Meaning::fails)) > 0.5);
}
