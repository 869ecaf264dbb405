// The condensed path against one sparse solve of the same model, on random constructs.
#include "tests/models/assembly/monolithic_difference.h"
#include "tests/models/constructs.h"
#include "tests/models/measures/compression_constructs.h"

#include <catch2/catch.hpp>

namespace gapstrain {

TEST_CASE("a construct's displacements, stresses and link forces equal the monolithic solve's",
          "[models][build]") {
  const unsigned seed = GENERATE(range(1U, 13U));
  CAPTURE(seed);
  const auto difference = tests::monolithic_difference(tests::random_construct(seed));
  CHECK(difference.displacement < 1e-8);
  CHECK(difference.stress < 1e-8);
  CHECK(difference.link_force < 1e-8);
}

// The give of bone round a screw is shared by the links on either side of the near cortex.
TEST_CASE("with screws soft in bone a construct equals the monolithic solve as well", "[models][build]") {
  models::Construct construct = tests::random_construct(3);
  construct.screw_interface = 0.3;
  const auto difference = tests::monolithic_difference(construct);
  CHECK(difference.displacement < 1e-8);
  CHECK(difference.stress < 1e-8);
  CHECK(difference.link_force < 1e-8);
}

// The monolithic solve gets the pairs that touch and stick in the end as links like any other.
TEST_CASE("a pressed construct equals the monolithic solve with the same pairs in touch", "[models][build]") {
  models::Construct construct = tests::pressed_tube();
  const auto difference = tests::monolithic_difference(construct);
  CHECK(difference.displacement < 1e-8);
  CHECK(difference.stress < 1e-8);
  CHECK(difference.link_force < 1e-8);
}

}  // namespace gapstrain
