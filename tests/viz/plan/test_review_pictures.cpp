#include "viz/plan/review_pictures.h"

#include "tests/framework/numbers.h"
#include "tests/viz/picture_file.h"
#include "tests/viz/plan/sample_plan.h"

#include <catch2/catch.hpp>

#include <limits>
#include <stdexcept>
#include <string>

using namespace gapstrain;
namespace fs = std::filesystem;

namespace {

using tests::display;
using tests::drawn;

// A margin of one construct.
struct Bar {
  std::string name;
  double factor = 0.0;
  bool indicative = false;
};

tests::PictureFile margins(const std::vector<Bar>& bars) {
  viz::MarginChart chart{"Margins", "What each part has in hand", {}, {}};
  for (const auto& [name, factor, indicative] : bars) chart.rows.push_back({name, {factor}, indicative});
  return drawn([&](const fs::path& png) { viz::draw_margins(display(), chart, png); });
}

const viz::PlanFacts facts{{"Side", "left"}, {"Drawn", "2026-01-31"}};

tests::PictureFile plan_page(const tests::SamplePlan& sample) {
  return drawn([&](const fs::path& png) { viz::draw_plan(display(), sample.construct, sample.plan, facts, png); });
}

double share_enough(const tests::PictureFile& picture) {
  return picture.share_near(viz::colour_of(viz::Meaning::holds), 0.02);
}
double share_failing(const tests::PictureFile& picture) {
  return picture.share_near(viz::colour_of(viz::Meaning::fails), 0.02);
}

std::size_t differing(const tests::PictureFile& one, const tests::PictureFile& other) {
  REQUIRE(one.pixels.size() == other.pixels.size());
  std::size_t count = 0;
  for (std::size_t i = 0; i < one.pixels.size(); ++i) count += one.pixels[i] != other.pixels[i] ? 1 : 0;
  return count;
}

tests::SamplePlan plan_of_all_holes(int holes) {
  tests::PlanSizes sizes{.holes = holes, .filled = {}};
  for (int hole = 1; hole <= holes; ++hole) sizes.filled.push_back(hole);
  return tests::sample_plan(sizes);
}

}  // namespace

TEST_CASE("margins are bars from the line at 1, apart in colour by their side of it", "[viz][review]") {
  const auto picture = margins({{"plate, yield", 1.4}, {"plate, fatigue", 0.7}, {"screw S4, pull-out", 6.3}});
  CHECK(picture.width == 2000);
  CHECK(picture.has_white_border(8));
  CHECK(share_enough(picture) > 0.01);
  CHECK(share_failing(picture) > 2e-3);
  CHECK(share_failing(margins({{"plate, yield", 1.4}, {"screw S4, pull-out", 6.3}})) == 0.0);
}

TEST_CASE("an indicative margin is hollow", "[viz][review]") {
  const auto filled = margins({{"bone at the screws", 5.0, false}});
  const auto hollow = margins({{"bone at the screws", 5.0, true}});
  CHECK(share_enough(hollow) > 0.0);
  // The legend keeps its sample.
  CHECK(share_enough(hollow) < 0.45 * share_enough(filled));
}

TEST_CASE("margins are drawn worst first, whatever their order", "[viz][review]") {
  const auto one = margins({{"a", 0.6}, {"b", 2.0}, {"c", 30.0}});
  const auto other = margins({{"c", 30.0}, {"a", 0.6}, {"b", 2.0}});
  CHECK(differing(one, other) == 0);
}

TEST_CASE("of many margins the worst fifteen are drawn", "[viz][review]") {
  std::vector<Bar> bars;
  for (int k = 0; k < 15; ++k)
    bars.push_back({"screw with a name that needs two lines to be written", 1.2 + 0.3 * k});
  const auto fifteen = margins(bars);
  for (int k = 0; k < 5; ++k) bars.push_back({"better", 40.0 + k});
  const auto twenty = margins(bars);
  CHECK(twenty.height == fifteen.height);
  CHECK(twenty.says("Worst 15 of 20"));
  CHECK(fifteen.says("Worst first"));
  CHECK_FALSE(twenty.says("better"));
  CHECK(share_enough(twenty) == Approx(share_enough(fifteen)));
  bars.push_back({"the worst of all", 0.2});
  CHECK(share_failing(margins(bars)) > 1e-3);
}

TEST_CASE("margins without end, of nothing and without a value are drawn too", "[viz][review]") {
  constexpr double infinite = std::numeric_limits<double>::infinity();
  const auto picture = margins({{"endless", infinite}, {"none at all", 0.0}, {"unknown", tests::missing}});
  CHECK(picture.has_white_border(8));
  CHECK(share_failing(picture) > 2e-3);
  CHECK(share_enough(picture) > 5e-3);
  CHECK(picture.height == margins({{"endless", infinite}, {"none at all", 0.0}}).height);
  CHECK(margins({}).has_white_border(8));
}

TEST_CASE("margins of several constructs stand in their own colours at the same line", "[viz][review]") {
  const viz::MarginChart chart{
      "Margins", "", {{"plate, yield", {1.4, 0.7}}, {"bone", {6.3, 2.0}}}, {"A: bridged", "B: compressed"}};
  const auto picture = drawn([&](const fs::path& png) { viz::draw_margins(display(), chart, png); });
  CHECK(picture.has_white_border(8));
  for (std::size_t construct = 0; construct < 2; ++construct)
    CHECK(picture.share_near(viz::curve_colours[construct], 0.02) > 1e-3);
  CHECK(share_failing(picture) == 0.0);
  auto uneven = chart;
  uneven.rows[0].factors.pop_back();
  CHECK_THROWS_AS(viz::draw_margins(display(), uneven, "unused.png"), std::invalid_argument);
}

TEST_CASE("a plan is an A4 page with plate, bone and screws on it", "[viz][review]") {
  const auto picture = plan_page(tests::sample_plan());
  CHECK(picture.width == 2000);
  CHECK(picture.height == 2828);  // 210 mm x 297 mm
  CHECK(picture.has_white_border(8));
  CHECK(picture.share_near(viz::ink::bone, 0.02) > 5e-3);
  CHECK(picture.share_near({0.62, 0.64, 0.68}, 0.02) > 3e-3);  // the plate
  CHECK(picture.share_near({0.30, 0.31, 0.34}, 0.02) > 3e-3);  // the shafts
}

TEST_CASE("a plan is drawn whatever the number of its screws and holes", "[viz][review]") {
  for (const int holes : {1, 3, 20, 30}) {
    auto sample = plan_of_all_holes(holes);
    const auto notes = sample.plan.notes;
    sample.plan.notes.insert(sample.plan.notes.end(), notes.begin(), notes.end());
    const auto picture = plan_page(sample);
    CHECK(picture.has_white_border(8));
    CHECK(picture.share_not_white() > 0.02);
  }
  auto bare = tests::sample_plan({.filled = {}, .lag_beside = false});
  bare.plan.bends.clear();
  CHECK(plan_page(bare).has_white_border(8));
}

TEST_CASE("a longer screw is drawn longer, a bend the other way the other way round", "[viz][review]") {
  auto sample = tests::sample_plan({.lag_beside = false});
  const auto before = plan_page(sample);
  auto longer = sample;
  longer.plan.screws[1].length = *longer.plan.screws[1].length + 3.0 * models::mm;
  const viz::Colour shaft{0.30, 0.31, 0.34};
  CHECK(plan_page(longer).share_near(shaft, 0.02) > 1.01 * before.share_near(shaft, 0.02));
  auto bent = sample;
  for (auto& bend : bent.plan.bends) bend.bend = -bend.bend;
  CHECK(differing(plan_page(bent), before) > 2000);
}

TEST_CASE("the prebend is told above the bends", "[viz][review]") {
  auto sample = tests::sample_plan();
  const auto without = plan_page(sample);
  sample.plan.prebend = models::PlannedPrebend{2.0 * models::mm, 60.0 * models::mm, 3.1 * models::degree};
  const auto with = plan_page(sample);
  CHECK(with.has_white_border(8));
  CHECK(with.says("prebend"));
  CHECK(with.says("3.1\u00b0 more, stands 2 mm off"));
  CHECK_FALSE(without.says("prebend"));
  CHECK(differing(with, without) > 10000);  // all below moves down
}
