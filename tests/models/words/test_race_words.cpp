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

TEST_CASE("lives beyond what metals are tested to are called estimates, others are not", "[models][review]") {
  RaceCourse steady;
  steady.life_factor = {10.0, 20.0, 47.0};
  steady.tested_factor = 48.0;
  CHECK_THAT(course_sentence(steady), !Catch::Matchers::Contains("ESTIMATE"));
  steady.life_factor.high = 49.0;
  CHECK_THAT(
      course_sentence(steady),
      Catch::Matchers::EndsWith(" Above 48, beyond the 10^7 cycles that metals are tested to, the factor is an "
                                "ESTIMATE."));
  ScrewRace screws;
  screws.life_factor = {2.0, 3.0, 300.0};
  screws.tested_factor = 48.0;
  CHECK_THAT(screw_sentence(screws, HealingCourse::governed), Catch::Matchers::Contains("is an ESTIMATE."));
  RaceCourse none;
  none.course = HealingCourse::none;
  none.tested_weeks = 143.2;
  CHECK_THAT(
      course_sentence(none),
      Catch::Matchers::EndsWith(" From week 144 on, beyond the 10^7 cycles that metals are tested to, that is an "
                                "ESTIMATE."));
  none.breaks_low = 3.0;
  none.breaks_high = 12.0;
  CHECK_THAT(course_sentence(none), !Catch::Matchers::Contains("ESTIMATE"));  // over before
  none.breaks_high.reset();
  none.tested_weeks = 400.0;  // later than it is looked for
  CHECK_THAT(course_sentence(none), !Catch::Matchers::Contains("ESTIMATE"));
}
