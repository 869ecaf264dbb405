#include "viz/construct/plate_places.h"

#include "tests/viz/sample.h"
#include "viz/construct/peak_text.h"

#include <catch2/catch.hpp>

using namespace gapstrain;

TEST_CASE("holes are found by number in their order, ten after nine", "[viz][plate_places]") {
  const auto fields = tests::sample_fields();
  const auto holes = viz::hole_places(viz::plate_of(fields));
  REQUIRE(holes.size() == std::size_t(tests::sample_holes));
  for (int k = 0; k < tests::sample_holes; ++k) {
    const auto& hole = holes[static_cast<std::size_t>(k)];
    CHECK(hole.number == k + 1);
    CHECK(hole.centre.x() == Approx(tests::sample_plate_start + (k + 0.5) * tests::sample_pitch));
    CHECK(hole.centre.y() == Approx(0.0).margin(1e-9));
    CHECK(hole.radius == Approx(2.05));
  }
}

TEST_CASE("the hottest node is looked for on the face asked for", "[viz][plate_places]") {
  auto fields = tests::sample_fields();
  auto& plate = fields.shells.front();
  plate.von_mises_top(17) = 2000.0;
  plate.von_mises_middle(23) = 3000.0;
  plate.von_mises_bottom(5) = 1000.0;
  CHECK(viz::hottest_node(plate, models::PlateFace::top) == 17);
  CHECK(viz::hottest_node(plate, models::PlateFace::middle) == 23);
  CHECK(viz::hottest_node(plate, models::PlateFace::bottom) == 5);
  CHECK(viz::largest_von_mises(plate) == 3000.0);
}

TEST_CASE("the peak is written with three figures, place and face", "[viz][plate_places]") {
  models::PlatePeak peak;
  peak.von_mises = 412.37 * models::mpa;
  peak.along = 43.24 * models::mm;
  peak.hole = 6;
  CHECK(viz::peak_text(peak) == "412 MPa, hole 6, top face");
  peak.hole.reset();
  peak.face = models::PlateFace::bottom;
  peak.von_mises = 41.237 * models::mpa;
  CHECK(viz::peak_text(peak) == "41.2 MPa, 43.2 mm along the plate, bottom face");
}
