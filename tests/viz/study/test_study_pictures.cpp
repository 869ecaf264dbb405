#include "tests/framework/numbers.h"
#include "tests/viz/study/study_charts.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

using namespace gapstrain;
using namespace gapstrain::viz;
using namespace gapstrain::tests;  // NOLINT: helpers of these tests

TEST_CASE("a cloud of points shows every group, the front and what is marked", "[viz][study]") {
  auto chart = some_layouts();
  chart.clouds.push_back({"stiff ones", {30.0, 40.0}, {330.0, 360.0}});
  const auto plain = scatter(chart);
  check_whole(plain);
  // Translucent dots: most of the colour is there.
  CHECK(ink_of(plain, 0, 0.12) > 3e-4);
  CHECK(ink_of(plain, 1, 0.12) > 1e-4);
  CHECK(ink_of(plain, 2, 0.12) == 0.0);
  chart.marked = {{"surgeon's layout", 60.0, 400.0}};
  const auto marked = scatter(chart);
  for (const auto& name : {"layouts", "stiff ones"}) CHECK(marked.says(name));
  CHECK(marked.says("surgeon's layout"));
  CHECK_FALSE(plain.says("surgeon's layout"));
  CHECK_FALSE(marked.says("best"));
  chart.front = Front{"best", {20.0, 60.0, 130.0}, {210.0, 260.0, 610.0}, true};
  const auto with_front = scatter(chart);
  CHECK(with_front.says("best"));
  // The front of one point has the same words and no line.
  chart.front = Front{"best", {60.0}, {260.0}, true};
  CHECK(with_front.share_near(ink::text, 0.02) > scatter(chart).share_near(ink::text, 0.02) + 1e-3);
}

TEST_CASE("a hundred thousand points neither fill the picture nor vanish", "[viz][study]") {
  auto chart = some_layouts();
  auto& cloud = chart.clouds[0];
  cloud = {"layouts", {}, {}};
  // Two thirds of the area, evenly: Weyl's sequence.
  for (int i = 0; i < 100000; ++i) {
    cloud.x.push_back(100.0 * std::fmod(0.5 + i * 0.7548776662466927, 1.0));
    cloud.y.push_back(500.0 * std::fmod(0.5 + i * 0.5698402909980532, 1.0) + (i % 2 == 0 ? 0.0 : 250.0));
  }
  const auto picture = scatter(chart);
  check_whole(picture);
  CHECK(picture.share_not_white() > 0.2);
  CHECK(ink_of(picture, 0) < 0.1);  // the full colour only where many lie on each other
}

TEST_CASE("points without a value are left out of a cloud as if they were not there", "[viz][study]") {
  auto chart = some_layouts();
  const auto whole = scatter(chart);
  chart.clouds[0].x.push_back(70.0);
  chart.clouds[0].y.push_back(missing);
  chart.clouds[0].x.push_back(std::numeric_limits<double>::infinity());
  chart.clouds[0].y.push_back(300.0);
  const auto with_gaps = scatter(chart);
  CHECK(same_below_head(whole, with_gaps));
  CHECK(with_gaps.says("2 points without a value left out"));
  CHECK_FALSE(whole.says("left out"));
}

TEST_CASE("each of eight curves is drawn, further ones are not, and the subtitle says so", "[viz][study]") {
  const auto eight = curves(some_curves(8));
  check_whole(eight);
  for (std::size_t colour = 0; colour < curve_colours.size(); ++colour) CHECK(ink_of(eight, colour) > 2e-3);
  auto chart = some_curves(8);
  chart.panels[0].curves.push_back({"ninth", {50.0}, {300.0}, {}, {}});
  const auto nine = curves(chart);
  CHECK(same_below_head(eight, nine));
  CHECK(nine.says("First 8 of 9 curves"));
  CHECK_FALSE(eight.says("First"));
  CHECK(nine.says("gap 7"));
  CHECK_FALSE(nine.says("ninth"));
}

TEST_CASE("a curve is broken where it has no value, and its band shows beside it", "[viz][study]") {
  auto chart = some_curves(1);
  auto& curve = chart.panels[0].curves[0];
  const double whole = ink_of(curves(chart), 0);
  for (std::size_t i = 8; i < 17; ++i) curve.y[i] = missing;
  const double broken = ink_of(curves(chart), 0);
  CHECK(broken < 0.8 * whole);
  CHECK(broken > 0.4 * whole);
  for (const double value : even(100.0, 130.0, 25)) {
    curve.low.push_back(value - 20.0);
    curve.high.push_back(value + 20.0);
  }
  const double before = curves(some_curves(1)).share_not_white();
  CHECK(curves(chart).share_not_white() > before + 0.1);
}

TEST_CASE("curves stand in one to three panels", "[viz][study]") {
  auto chart = some_curves(2);
  double last = 0.0;
  for (std::size_t panels = 1; panels <= 3; ++panels) {
    const auto picture = curves(chart);
    check_whole(picture);
    const double area = ink_of(picture, 0) * static_cast<double>(picture.pixels.size());
    CHECK(area > last * 1.2);
    last = area;
    chart.panels.push_back(chart.panels[0]);
  }
  CHECK_THROWS_AS(curves(chart), std::invalid_argument);
  chart.panels.clear();
  CHECK_THROWS_AS(curves(chart), std::invalid_argument);
}

TEST_CASE("limits are shaded or drawn as lines", "[viz][study]") {
  auto chart = some_curves(1);
  const auto plain = curves(chart);
  chart.panels[0].limits = {{"yield", 125.0, 125.0}};
  CHECK(curves(chart).says("yield"));
  CHECK_FALSE(plain.says("yield"));
  chart.panels[0].limits[0].name.clear();  // the line alone
  CHECK(curves(chart).share_near(ink::text, 0.02) > plain.share_near(ink::text, 0.02) + 5e-4);
  chart.panels[0].limits = {{"window", 105.0, 125.0}};
  CHECK(curves(chart).says("window"));
  CHECK(curves(chart).share_not_white() > plain.share_not_white() + 0.1);
}

TEST_CASE("a map shows each outcome in the scale's colour, and hatches where there is none", "[viz][study]") {
  MapChart chart;
  chart.x_values = {10.0, 20.0, 30.0, 40.0};
  chart.y_values = {1.0, 2.0};
  chart.outcomes.resize(2, 4);
  chart.outcomes << 0.0, 0.0, 100.0, 100.0, 0.0, 50.0, 50.0, 100.0;
  const auto share = [](const PictureFile& picture, double value) {
    return picture.share_near(scale_colour(value), 0.005);
  };
  const auto whole = map(chart);
  check_whole(whole);
  // Three, two and three cells of the same size; numbers and the legend take and give a little.
  const double cell = share(whole, 0.5) / 2.0;
  CHECK(cell > 0.04);
  CHECK(share(whole, 0.0) == Approx(3.0 * cell).epsilon(0.1));
  CHECK(share(whole, 1.0) == Approx(3.0 * cell).epsilon(0.1));
  chart.outcomes(0, 0) = missing;
  const auto hatched = map(chart);
  CHECK(share(hatched, 0.0) == Approx(2.0 * cell).epsilon(0.1));
  CHECK(hatched.says("no outcome"));
  CHECK_FALSE(whole.says("no outcome"));
  CHECK(hatched.share_near(ink::leader, 0.02) > whole.share_near(ink::leader, 0.02) + 0.004);
}

TEST_CASE("swings are sorted by width, and a bar is as long as what it stands for", "[viz][study]") {
  SwingChart chart;
  chart.outcome = {"largest stress, MPa"};
  chart.base = 400.0;
  chart.swings = {{"load", 300.0, 500.0}, {"gap", 390.0, 480.0}, {"bone", 410.0, 405.0}};
  const auto sorted = swings(chart);
  check_whole(sorted);
  std::reverse(chart.swings.begin(), chart.swings.end());
  CHECK(swings(chart).pixels == sorted.pixels);
  // At its high level the gap's bar gets shorter by as much as the outcome moves towards the base.
  const auto ink_at = [&](double outcome) {
    chart.swings[1].at_high = outcome;
    return ink_of(swings(chart), 1);
  };
  const double first = ink_at(480.0), second = ink_at(450.0), third = ink_at(420.0);
  CHECK(first - second > 1e-3);
  CHECK(first - second == Approx(second - third).epsilon(0.03));
}

TEST_CASE("bars are as long as their values, with or without intervals", "[viz][study]") {
  BarChart chart;
  chart.value = {"share of the variance"};
  chart.series = {"first order", "total"};
  chart.rows = {{"load", {{0.5, 0.45, 0.55}, {0.7, 0.6, 0.8}}},
                {"gap", {{0.4, missing, missing}, {0.1, 0.0, 0.2}}}};
  const auto ink_at = [&](double value) {
    chart.rows[1].bars[0].value = value;
    return ink_of(bars(chart), 0);
  };
  check_whole(bars(chart));
  const double first = ink_at(0.4), second = ink_at(0.25), third = ink_at(0.1);
  CHECK(first - second > 1e-3);
  CHECK(first - second == Approx(second - third).epsilon(0.03));
  chart.rows[0].bars.pop_back();
  CHECK_THROWS_AS(bars(chart), std::invalid_argument);
  chart.series.clear();
  CHECK_THROWS_AS(bars(chart), std::invalid_argument);
}

TEST_CASE("a histogram depends on its values only, and marks stand over it", "[viz][study]") {
  HistogramChart chart;
  chart.value = {"largest stress, MPa"};
  for (int i = 0; i < 500; ++i) chart.values.push_back(300.0 + 200.0 * std::fmod(i * 0.618033988749895, 1.0));
  const auto plain = histogram(chart);
  check_whole(plain);
  std::reverse(chart.values.begin(), chart.values.end());
  CHECK(histogram(chart).pixels == plain.pixels);
  chart.values.push_back(missing);
  CHECK(same_below_head(histogram(chart), plain));
  // Evenly spread values fill their classes evenly: three quarters of the panel's height under the room for marks.
  CHECK(ink_of(plain, 0) > 0.25);
  chart.marked = {{"median", 400.0}, {"mean", 401.0}, {"95th percentile", 490.0}};
  chart.limits = {{"yield", 690.0, 690.0}};
  const auto marked = histogram(chart);
  check_whole(marked);
  for (const auto& name : {"median", "mean", "95th percentile", "yield"}) {
    INFO(name);
    CHECK(marked.says(name));
    CHECK_FALSE(plain.says(name));
  }
  for (auto& mark : chart.marked) mark.name.clear();  // their lines alone
  chart.limits.clear();
  CHECK(histogram(chart).share_near(ink::text, 0.02) > plain.share_near(ink::text, 0.02) + 5e-4);
}

TEST_CASE("of many factors those that matter most are drawn", "[viz][study]") {
  const auto eight = effects(some_effects({90.0, 80.0, 70.0, 60.0, 50.0, 40.0, 30.0, 20.0}));
  check_whole(eight);
  CHECK(ink_of(eight, 0) > 2e-3);
  const auto ten = effects(some_effects({1.0, 90.0, 80.0, 70.0, 60.0, 50.0, 40.0, 30.0, 20.0, 2.0}));
  CHECK(same_below_head(eight, ten));
  CHECK(ten.says("The 8 of 10 factors that matter most"));
  CHECK_FALSE(eight.says("that matter most"));
  check_whole(effects(some_effects({90.0})));
}
