// The same as test_monolithic on many more constructs, and at the default mesh: minutes, so it has a command of
// its own.
#include "tests/models/assembly/monolithic_difference.h"
#include "tests/models/constructs.h"

#include <catch2/catch.hpp>

namespace gapstrain {

TEST_CASE("one hundred random constructs equal their monolithic solves", "[models][build][slow]") {
  for (unsigned seed = 100; seed < 200; ++seed) {
    CAPTURE(seed);
    const auto difference = tests::monolithic_difference(tests::random_construct(seed));
    CHECK(difference.displacement < 1e-8);
    CHECK(difference.stress < 1e-8);
    CHECK(difference.link_force < 1e-8);
  }
}

TEST_CASE("a construct at the default mesh equals its monolithic solve", "[models][build][slow]") {
  const auto difference = tests::monolithic_difference(tests::plated_tube());
  CHECK(difference.displacement < 1e-8);
  CHECK(difference.stress < 1e-8);
  CHECK(difference.link_force < 1e-8);
}

}  // namespace gapstrain
