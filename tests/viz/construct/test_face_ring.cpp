#include "viz/construct/face_ring.h"

#include <catch2/catch.hpp>

using namespace gapstrain;

TEST_CASE("an open place is white, one that touches the darker the more it presses", "[viz][colour]") {
  CHECK(viz::luminance(viz::pressure_colour(0.0, 18.0)) == Approx(1.0));
  CHECK(viz::luminance(viz::pressure_colour(3.0, 0.0)) == Approx(1.0));
  double lighter = 0.75;  // a bare touch is told from white
  for (const double pressure : {1e-6, 4.5, 9.0, 17.9}) {
    const double now = viz::luminance(viz::pressure_colour(pressure, 18.0));
    CHECK(now < lighter);
    lighter = now;
  }
  CHECK(viz::pressure_colour(18.0, 18.0).blue == viz::curve_colours[0].blue);
  CHECK(viz::pressure_colour(40.0, 18.0).red == viz::curve_colours[0].red);
}
