#include "viz/fracture/round_bone.h"

#include "tests/framework/numbers.h"

#include <catch2/catch.hpp>

using namespace gapstrain;

using gapstrain::tests::missing;

namespace {}

TEST_CASE("a curve round the bone closes over both ends of the chart", "[viz][chart]") {
  const auto curve = viz::round_curve({20.0, 110.0, 200.0, 340.0}, {1.0, 5.0, 2.0, 4.0});
  REQUIRE(curve.pieces.size() == 1);
  CHECK(curve.missing.empty());
  CHECK(curve.pieces[0].around == std::vector<double>{0.0, 20.0, 110.0, 200.0, 340.0, 360.0});
  CHECK(curve.pieces[0].values.front() == Approx(2.5));  // half way over the seam, from 4 to 1
  CHECK(curve.pieces[0].values.back() == Approx(2.5));
}

TEST_CASE("a place at the very start of the chart comes again at its end", "[viz][chart]") {
  const auto curve = viz::round_curve({0.0, 130.0, 250.0}, {3.0, 5.0, 2.0});
  REQUIRE(curve.pieces.size() == 1);
  CHECK(curve.pieces[0].around.back() == 360.0);
  CHECK(curve.pieces[0].values.back() == Approx(3.0));
}

TEST_CASE("where there is no value the curve is broken half way to its neighbours", "[viz][chart]") {
  const auto curve =
      viz::round_curve({30.0, 90.0, 150.0, 210.0, 270.0, 330.0}, {1.0, 2.0, missing, missing, 5.0, 6.0});
  REQUIRE(curve.pieces.size() == 2);
  CHECK(curve.pieces[0].around == std::vector<double>{0.0, 30.0, 90.0});
  CHECK(curve.pieces[1].around == std::vector<double>{270.0, 330.0, 360.0});
  REQUIRE(curve.missing.size() == 1);
  CHECK(curve.missing[0] == std::pair(120.0, 240.0));
}

TEST_CASE("what is missing over the seam is missing at both ends", "[viz][chart]") {
  const auto curve = viz::round_curve({30.0, 150.0, 330.0}, {missing, 2.0, missing});
  REQUIRE(curve.pieces.size() == 1);
  CHECK(curve.pieces[0].values == std::vector<double>{2.0});
  REQUIRE(curve.missing.size() == 2);
  CHECK(curve.missing[0] == std::pair(0.0, 90.0));
  CHECK(curve.missing[1] == std::pair(240.0, 360.0));
  const auto none = viz::round_curve({30.0, 150.0, 330.0}, {missing, missing, missing});
  CHECK(none.pieces.empty());
  REQUIRE(none.missing.size() == 1);
  CHECK(none.missing[0] == std::pair(0.0, 360.0));
}
