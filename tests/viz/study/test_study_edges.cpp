// Charts of studies of nothing, of one value all over, and of names without an end.
#include "tests/framework/numbers.h"
#include "tests/viz/study/study_charts.h"

#include <catch2/catch.hpp>

#include <limits>

using namespace gapstrain;
using namespace gapstrain::viz;
using namespace gapstrain::tests;  // NOLINT: helpers of these tests

TEST_CASE("charts of studies without any value are drawn and say so", "[viz][study]") {
  check_says_nothing(scatter({}));
  auto no_curves = some_curves(1);
  no_curves.panels[0].curves = {{"empty", {}, {}, {}, {}}, {"unknown", {1.0, 2.0}, {missing, missing}, {}, {}}};
  check_says_nothing(curves(no_curves));
  check_says_nothing(map({}));
  MapChart unknown;
  unknown.x_values = unknown.y_values = {1.0, 2.0};
  unknown.outcomes = Eigen::MatrixXd::Constant(2, 2, missing);
  const auto unknown_map = map(unknown);
  check_whole(unknown_map);
  CHECK(unknown_map.says("no outcome"));  // beside the sample of its hatching
  check_says_nothing(swings({}));
  SwingChart unknown_swings;
  unknown_swings.base = missing;
  unknown_swings.swings = {{"load", missing, 3.0}};
  check_says_nothing(swings(unknown_swings));
  BarChart no_bars;
  no_bars.series = {"only"};
  check_says_nothing(bars(no_bars));
  no_bars.rows = {{"unknown", {{missing, missing, missing}}}};
  check_says_nothing(bars(no_bars));
  check_says_nothing(histogram({}));
  check_says_nothing(effects({}));
  check_says_nothing(effects(some_effects({missing})));
}

TEST_CASE("charts of studies are drawn where all values are the same, on either scale", "[viz][study]") {
  for (const bool logarithmic : {false, true}) {
    auto layouts = some_layouts();
    layouts.x.logarithmic = layouts.y.logarithmic = logarithmic;
    layouts.clouds = {{"one", {50.0, 50.0}, {300.0, 300.0}}};
    check_whole(scatter(layouts));
    auto flat = some_curves(1);
    flat.x.logarithmic = flat.panels[0].y.logarithmic = logarithmic;
    flat.panels[0].curves = {{"one", {50.0}, {300.0}, {300.0}, {300.0}}};
    check_whole(curves(flat));
    SwingChart still{{}, {"stress, MPa", logarithmic}, 300.0, "base", {{"load", 300.0, 300.0}}};
    check_whole(swings(still));
    BarChart same{{}, {"stress, MPa", logarithmic}, {"only"}, {{"load", {{300.0, 300.0, 300.0}}}}};
    check_whole(bars(same));
    HistogramChart once{{}, {"stress, MPa", logarithmic}, {300.0, 300.0, 300.0}, {}, {}};
    check_whole(histogram(once));
    auto no_effect = some_effects({0.0});
    no_effect.y.logarithmic = logarithmic;
    check_whole(effects(no_effect));
  }
  MapChart flat;
  flat.x_values = flat.y_values = {1.0};
  flat.outcomes = Eigen::MatrixXd::Constant(1, 1, 300.0);
  check_whole(map(flat));
}

TEST_CASE("long names stay within the charts of studies", "[viz][study]") {
  const ChartWords words{long_name, long_name};
  const NamedAxis axis{long_name};
  const std::vector<Limit> limits{{long_name, 300.0, 300.0}, {long_name, 310.0, 350.0}};
  ScatterChart layouts{words, axis, axis, {}, Front{long_name, {1.0}, {300.0}}, {}, limits, limits};
  for (int c = 0; c < 3; ++c) {
    layouts.clouds.push_back({long_name, {200.0, 400.0}, {250.0, 350.0}});
    layouts.marked.push_back({long_name, 200.0, 250.0 + c});
  }
  check_whole(scatter(layouts));
  auto many = some_curves(8);
  many.words = words;
  many.x = many.panels[0].y = axis;
  many.panels[0].limits = limits;
  for (auto& curve : many.panels[0].curves) curve.name = long_name;
  many.panels.resize(3, many.panels[0]);
  check_whole(curves(many));
  MapChart cells{words, axis, axis, {1e-9, 12345678.0}, {1e12}, Eigen::MatrixXd::Constant(1, 2, 3e9), long_name};
  check_whole(map(cells));
  check_whole(swings({words, axis, 300.0, long_name, {{long_name, 200.0, 12345.0}}}));
  check_whole(bars({words, axis, {long_name, long_name}, {{long_name, {{1.0, 0.0, 2.0}, {-1e6, -2e6, 0.0}}}}}));
  check_whole(histogram({words, axis, {200.0, 400.0, 900.0}, {{long_name, 400.0}, {long_name, 500.0}}, limits}));
  auto factors = some_effects({90.0, 80.0, 70.0, 60.0, 50.0, 40.0, 30.0, 20.0});
  factors.words = words;
  factors.y = axis;
  for (auto& factor : factors.factors) {
    factor.name = long_name;
    for (auto& level : factor.levels) level.text = long_name;
  }
  check_whole(effects(factors));
}

TEST_CASE("coordinates that differ in number are refused", "[viz][study]") {
  auto layouts = some_layouts();
  layouts.clouds[0].y.pop_back();
  CHECK_THROWS_AS(scatter(layouts), std::invalid_argument);
  auto lines = some_curves(1);
  lines.panels[0].curves[0].low = {1.0};
  CHECK_THROWS_AS(curves(lines), std::invalid_argument);
  MapChart cells;
  cells.x_values = {1.0};
  CHECK_THROWS_AS(map(cells), std::invalid_argument);
}
