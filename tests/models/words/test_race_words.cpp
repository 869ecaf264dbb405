// What of a race's words can be told without a race.
#include "models/words/race_words.h"

#include <catch2/catch.hpp>

using namespace gapstrain::models;

TEST_CASE("factors are given to two digits and not beyond what they mean", "[models][review]") {
  CHECK(factor_text(4.23) == "4.2");
  CHECK(factor_text(11.4) == "11");
  CHECK(factor_text(1789.0) == "1800");
  CHECK(factor_text(0.0734) == "0.073");
  CHECK(factor_text(3e7) == "more than 10000");
  CHECK(factor_text(1e-4) == "less than 0.01");
}

TEST_CASE("the weeks of a break are whole ones, and open beyond five years", "[models][review]") {
  CHECK(weeks_text(1.4, 4.2) == "in week 2 to 5");
  CHECK(weeks_text(3.1, 3.9) == "in week 4");
  CHECK(weeks_text(0.0, 0.5) == "in week 1");
  CHECK(weeks_text(29.5, std::nullopt) == "not before week 30");
}
