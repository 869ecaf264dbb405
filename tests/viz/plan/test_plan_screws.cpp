#include "viz/plan/plan_screws.h"

#include "models/parts/words.h"
#include "tests/viz/plan/sample_plan.h"

#include <catch2/catch.hpp>

using namespace gapstrain;

TEST_CASE("a planned screw knows the step it goes in with", "[viz][review]") {
  auto sample = tests::sample_plan({.filled = {1, 4, 7}});
  // The steps put them in from distal, the first one twice.
  models::Step clean;
  clean.insert = {"S7"};
  models::Step both;
  both.insert = {"S1", "L"};
  models::Step again;
  again.remove = {"S7"};
  models::Step last;
  last.insert = {"S7", "S4"};
  sample.construct.steps = {clean, both, again, last};
  const auto planned = viz::planned_screws(sample.construct, sample.plan);
  REQUIRE(planned.size() == 4);
  std::vector<int> steps;
  for (const auto& screw : planned) {
    CHECK(screw.order->label == screw.screw->label);
    steps.push_back(screw.step);
  }
  CHECK(steps == std::vector<int>{2, 4, 1, 2});
}

TEST_CASE("screws without steps go in in the construct's order", "[viz][review]") {
  auto sample = tests::sample_plan({.filled = {1, 4}});
  std::swap(sample.construct.screws[0], sample.construct.screws[2]);  // the lag screw first
  const auto planned = viz::planned_screws(sample.construct, sample.plan);
  std::vector<int> steps;
  for (const auto& screw : planned) steps.push_back(screw.step);
  CHECK(steps == std::vector<int>{3, 2, 1});
}

TEST_CASE("screws that share number and name are told apart by their order", "[viz][review]") {
  auto sample = tests::sample_plan({.filled = {1}});
  sample.construct.screws.push_back(sample.construct.screws.back());
  sample.plan.screws.push_back(sample.plan.screws.back());
  for (auto* label : {&sample.construct.screws[1].label, &sample.construct.screws[2].label,
                      &sample.plan.screws[1].label, &sample.plan.screws[2].label})
    label->clear();
  const auto planned = viz::planned_screws(sample.construct, sample.plan);
  REQUIRE(planned.size() == 3);
  CHECK(planned[1].step == 2);
  CHECK(planned[2].step == 3);
}

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
