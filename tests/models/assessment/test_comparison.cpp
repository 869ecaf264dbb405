// Figures of constructs held against each other, and what makes two of them one patient's.
#include "models/assessment/comparison.h"

#include "tests/models/constructs.h"

#include <catch2/catch.hpp>

#include <cmath>

namespace gapstrain {

using namespace models;  // NOLINT: this file is nothing but comparisons

namespace {

ComparedFigure figure(std::optional<bool> high_is_better, std::vector<std::optional<double>> values,
                      double model_error) {
  return {"made up", "MPa", high_is_better, std::move(values), model_error};
}

}  // namespace

TEST_CASE("figures are told apart once they differ by more than the model error of both", "[models][review]") {
  // 10 % either way: 1.1 / 0.9 = 1.222.
  CHECK_FALSE(figure(true, {100.0, 122.0}, 0.1).is_told_apart());
  CHECK(figure(true, {100.0, 122.5}, 0.1).is_told_apart());
  CHECK_FALSE(figure(true, {100.0, 100.0}, 0.0).is_told_apart());
  CHECK(figure(true, {100.0, 101.0}, 0.0).is_told_apart());
  // Strain is signed: its size counts.
  CHECK(*figure(std::nullopt, {-4.0, 2.0}, 0.0).ratio() == Approx(2.0));
  CHECK(std::isinf(*figure(true, {0.0, 2.0}, 0.1).ratio()));
  CHECK_FALSE(figure(true, {std::nullopt, 2.0}, 0.1).ratio());
  CHECK_FALSE(figure(true, {std::nullopt, 2.0}, 0.1).is_told_apart());
}

TEST_CASE("the best is the highest or the lowest once all have the figure and are told apart",
          "[models][review]") {
  CHECK(figure(true, {1.0, 3.0, 2.0}, 0.1).best() == std::optional<std::size_t>(1));
  CHECK(figure(false, {3.0, 1.0, 2.0}, 0.1).best() == std::optional<std::size_t>(1));
  CHECK_FALSE(figure(true, {1.0, std::nullopt, 3.0}, 0.1).best());
  // Lives beyond what is told are alike.
  ComparedFigure lives = figure(true, {2e4, 3e9}, 0.1);
  lives.most = 1e4;
  CHECK(*lives.ratio() == 1.0);
  CHECK_FALSE(lives.best());
  CHECK_FALSE(figure(true, {1.0, 1.1}, 0.1).best());
  CHECK_FALSE(figure(std::nullopt, {1.0, 3.0}, 0.1).best());
}

TEST_CASE("constructs are one patient's when bone, mass, cut, loads and healing are the same",
          "[models][review]") {
  const Construct one = tests::plated_tube();
  Construct other = one;
  other.name = "another";
  other.screws.pop_back();
  only(other.plates).length *= 1.5;
  only(other.fractures).gap *= 0.5;
  CHECK(patient_differences(one, other).empty());
  const auto difference = [&](const auto& change) {
    Construct changed = one;
    change(changed);
    return patient_differences(one, changed);
  };
  using Names = std::vector<std::string>;
  CHECK(difference([](Construct& c) { c.body_mass = 3.0 * kilogram; }) == Names{"body mass"});
  CHECK(difference([](Construct& c) { c.bone.stations.front().cortex *= 1.1; }) == Names{"bone"});
  CHECK(difference([](Construct& c) { only(c.fractures).obliquity = 10.0 * degree; }) == Names{"fracture"});
  CHECK(difference([](Construct& c) { c.loads.front().cycles_per_day = 10.0; }) == Names{"set of loads"});
  CHECK(difference([](Construct& c) { c.loads.pop_back(); }) == Names{"set of loads"});
  CHECK(difference([](Construct& c) { c.healing = Healing{}; }) == Names{"course of healing"});
  CHECK(difference([](Construct& c) {
          c.bone.length *= 1.1;
          c.loads.front().spread = 0.5;
        }) == Names{"bone", "set of loads"});
}

}  // namespace gapstrain
