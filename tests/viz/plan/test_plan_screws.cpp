#include "viz/plan/plan_screws.h"

#include "models/parts/words.h"
#include "tests/viz/plan/sample_plan.h"

#include <catch2/catch.hpp>

using namespace gapstrain;

TEST_CASE("lengths and angles are written as they are ordered and bent", "[viz][review]") {
  using namespace models;
  CHECK(viz::length_text(28.0 * mm) == "28");
  CHECK(viz::length_text(2.5 * mm) == "2.5");
  CHECK(viz::length_text(27.98 * mm) == "28");
  CHECK(viz::degrees_text(3.14 * degree) == "+3.1");
  CHECK(viz::degrees_text(-12.5 * degree) == "−12.5");
  CHECK(viz::degrees_text(-0.04 * degree) == "0");
  CHECK(viz::degrees_text(0.04 * degree) == "0");
}

TEST_CASE("kinds of screws differ in shape and name", "[viz][review]") {
  for (const auto one : viz::screw_kinds)
    for (const auto other : viz::screw_kinds) {
      if (one == other) continue;
      CHECK(viz::head_shape(one) != viz::head_shape(other));
      CHECK(models::name_of(one) != models::name_of(other));
    }
}
