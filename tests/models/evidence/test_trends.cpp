// How statements are judged, that the bench models are sound, and that they obey the closed forms of a plate that
// bridges a gap between rigid fragments. Whether papers agree is a result, not a test.
#include "models/evidence/trends.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <set>

using namespace gapstrain::models;  // NOLINT: nothing but parts and studies

namespace {

Trend bounded_trend() {
  Trend trend;
  trend.if_agrees = "as expected";
  trend.otherwise = "not as expected";
  return trend;
}

}  // namespace

TEST_CASE("a statement agrees when every bound holds, the bounds themselves among them", "[trends]") {
  const Trend trend = bounded_trend();
  const auto verdict = [&](std::vector<Measure> measures) {
    return judge(trend, {{"as tested", std::move(measures)}}, {}).verdict;
  };
  CHECK(verdict({{"a", 1.6, 1.6, 2.2}, {"b", 0.9, {}, 0.9}, {"free", 100.0}}) == Agreement::agrees);
  CHECK(verdict({{"a", 1.6, 1.6, 2.2}, {"b", 0.91, {}, 0.9}}) == Agreement::disagrees);
  CHECK(verdict({{"a", 1.59, 1.6, 2.2}}) == Agreement::disagrees);
  CHECK(verdict({{"a", 2.21, 1.6, 2.2}}) == Agreement::disagrees);
  CHECK(judge(trend, {{"", {{"a", 1.0, 0.9, {}}}}}, {}).why == "as expected");
  CHECK(judge(trend, {{"", {{"a", 0.8, 0.9, {}}}}}, {}).why == "not as expected");
  CHECK(verdict({{"a", std::numeric_limits<double>::quiet_NaN(), 0.9, 1.1}}) == Agreement::disagrees);
}

TEST_CASE("a statement that holds in some of the set-ups that its paper leaves open hangs on a guess",
          "[trends]") {
  const Trend trend = bounded_trend();
  const SetUpFinding holds{"one way", {{"a", 1.0, 0.9, 1.1}}}, fails{"another", {{"a", 0.5, 0.9, 1.1}}};
  CHECK(judge(trend, {holds, holds}, {}).verdict == Agreement::agrees);
  CHECK(judge(trend, {fails, fails}, {}).verdict == Agreement::disagrees);
  for (const auto& both : {std::vector{holds, fails}, std::vector{fails, holds}}) {
    CHECK(judge(trend, both, {}).verdict == Agreement::hangs_on_guess);
    CHECK(judge(trend, both, {}).why == "not as expected");
  }
}

TEST_CASE("without a bound, or with an outcome in doubt, nothing is compared", "[trends]") {
  const Trend trend = bounded_trend();
  const SetUpFinding free{"", {{"free", 1.0}}}, bounded{"", {{"a", 1.0, 0.9, 1.1}}};
  CHECK(judge(trend, {}, {}).verdict == Agreement::not_comparable);
  CHECK(judge(trend, {free}, {}).verdict == Agreement::not_comparable);
  CHECK(judge(trend, {bounded, free}, {}).verdict == Agreement::not_comparable);
  const TrendFinding doubtful = judge(trend, {bounded}, {"it turns too far"});
  CHECK(doubtful.verdict == Agreement::not_comparable);
  CHECK(doubtful.why.find("it turns too far") != std::string::npos);
}

TEST_CASE("every bench model is sound at every mesh, and each is asked about", "[trends]") {
  std::set<std::string_view> asked;
  for (const auto& trend : published_trends()) asked.insert(trend.models.begin(), trend.models.end());
  const auto names = bench_model_names();
  CHECK(asked == std::set<std::string_view>(names.begin(), names.end()));
  CHECK(asked.size() == names.size());  // no name twice
  for (const auto& name : names)
    for (const double refinement : {0.25, 1.0, 4.0})
      for (const auto& problem : check(bench_model(name, refinement).construct)) {
        INFO(name << ", " << problem.where << ": " << problem.message);
        CHECK(problem.severity == Severity::warning);
      }
}

TEST_CASE("every statement says what was known of its test, what was guessed and what it is held to", "[trends]") {
  for (const auto& trend : published_trends()) {
    INFO(trend.statement);
    CHECK_FALSE(trend.source.empty());
    CHECK_FALSE(trend.known.empty());
    CHECK(trend.set_ups.empty() == trend.models.empty());
    CHECK(trend.set_ups.empty() == trend.guessed.empty());
    CHECK(trend.set_ups.empty() == trend.criterion.empty());
    CHECK((!trend.if_agrees.empty() || !trend.otherwise.empty()));
  }
}

// Free span a between inner screws, load F on a line at the distance e from the plate's middle:
// shortening F (a/EA + e^2 a/EI), so between two spans of the same plate F/k differs by (a2 - a1)(1/EA + e^2/EI).
TEST_CASE("on a stiff bone compression obeys the closed form of a bridging plate", "[trends]") {
  Benches benches(0.5, {});
  const auto flexibility = [&](const std::vector<int>& holes) {
    return 1.0 / benches.outcome(bench::shaft, holes).stiffness.axial.value();
  };
  // mm, MPa; the plate's section between holes, so that holes make the model more flexible, by the share of the
  // span that they weaken.
  const double modulus = 105e3, area = 16.0 * 5.0, inertia = 16.0 * 125.0 / 12.0, offset = 13.0 + 2.0 + 2.5;
  const double plain = 72.0 * (1.0 / (modulus * area) + offset * offset / (modulus * inertia));
  const double found = flexibility({1, 2, 3, 10, 11, 12}) - flexibility({1, 2, 5, 8, 11, 12});
  CHECK(found > plain);
  CHECK(found < 1.35 * plain);
}

TEST_CASE("a gap that closes turns the effect of the working length on plate stress round", "[trends]") {
  Benches benches(0.5, {});
  const auto change = [&](std::string_view model) {
    const auto stress = [&](const std::vector<int>& holes) {
      return benches.under({model, holes, bench_load::axial}).peak_stress.value();
    };
    return stress({1, 2, 4, 9, 11, 12}) / stress({1, 2, 6, 7, 11, 12});
  };
  CHECK(change(bench::shaft) > 1.0);
  CHECK(change(bench::closing_shaft) < 1.0);
}

TEST_CASE("models that nothing more is asked about are forgotten and built again when they are", "[trends]") {
  std::vector<std::string> built;
  Benches benches(0.5, [&](const std::string& model) { built.push_back(model); });
  const std::vector<int> holes{1, 2, 3, 5, 6, 7};
  const auto torsion = [&] { return benches.outcome(bench::cylinder, holes).stiffness.torsion.value(); };
  const double once = torsion();
  benches.keep_only({bench::cylinder});
  CHECK(torsion() == once);
  CHECK(built.size() == 1);
  benches.keep_only({});
  CHECK(torsion() == Approx(once).epsilon(1e-6));
  CHECK(built.size() == 2);
}

TEST_CASE("stiffness is load over motion, whatever the load's size, while nothing touches", "[trends]") {
  Benches benches(0.5, {});
  const std::vector<int> holes{1, 2, 4, 5, 7, 8};
  const auto by_load = [&](std::string_view load) {
    return benches.stiffness_ratio({bench::humerus_far, holes, load}, {bench::humerus_near, holes, load});
  };
  const auto small = [&](std::string_view model) { return benches.outcome(model, holes).stiffness; };
  const auto far = small(bench::humerus_far), near = small(bench::humerus_near);
  CHECK(by_load(bench_load::axial) == Approx((far.axial / near.axial).value()));
  CHECK(by_load(bench_load::torsion) == Approx((far.torsion / near.torsion).value()));
  CHECK(by_load(bench_load::compression) == Approx((far.bending_y / near.bending_y).value()));
}

// Holding more never makes a body softer (Rayleigh): from balls to one end held to no turn at either end.
TEST_CASE("a bench that holds its specimen more firmly never finds it softer", "[trends]") {
  Benches benches(0.5, {});
  const std::vector<int> holes{1, 2, 9, 10};
  const auto stiffness = [&](std::string_view load) { return benches.stiffness({bench::bridge, holes, load}); };
  const double balls = stiffness(bench_load::axial), held = stiffness(bench_load::axial_held),
               guided = stiffness(bench_load::axial_guided);
  CHECK(balls < held);
  CHECK(held < guided);
  CHECK(stiffness(bench_load::torsion) < stiffness(bench_load::torsion_gripped));
  // The gap closes by less than the ends come together: the bone gives way too.
  CHECK(balls < benches.gap_stiffness({bench::bridge, holes, bench_load::axial}));
}

// As above, but on a line 40 mm beside the shaft at its proximal end and on its axis at the distal one: the offset
// is e(x) = 17.5 + 40 (1 - x/320), and F/k differs by the integral of 1/EA + e^2/EI over what one span has more.
TEST_CASE("a load line from a head beside the bone to its axis bends the plate by its own distance", "[trends]") {
  Benches benches(0.5, {});
  const auto flexibility = [&](const std::vector<int>& holes) {
    return 1.0 / benches.stiffness({bench::shaft, holes, bench_load::head_to_knee});
  };
  const double modulus = 105e3, area = 16.0 * 5.0, inertia = 16.0 * 125.0 / 12.0;
  const auto offset = [](double x) { return 13.0 + 2.0 + 2.5 + 40.0 * (1.0 - x / 320.0); };
  // Inner screws 45 and 81 mm off the middle, on both sides; Simpson's rule is exact for a square.
  const auto over = [&](double from, double to) {
    const double middle = 0.5 * (from + to);
    const double square = std::pow(offset(from), 2) + 4.0 * std::pow(offset(middle), 2) + std::pow(offset(to), 2);
    return (to - from) * (1.0 / (modulus * area) + square / 6.0 / (modulus * inertia));
  };
  const double plain = over(160.0 - 63.0, 160.0 - 27.0) + over(160.0 + 27.0, 160.0 + 63.0);
  const double found = flexibility({1, 2, 3, 10, 11, 12}) - flexibility({1, 2, 5, 8, 11, 12});
  CHECK(found > plain);
  CHECK(found < 1.35 * plain);
}

TEST_CASE("a gauge on the free span reads M t / (2 E I), and less where bone takes its share", "[trends]") {
  Benches benches(1.0, {});
  const BenchState state{bench::polyacetal, {1, 2, 5, 8, 11, 12}, bench_load::tension};
  const auto strains = benches.gauges(state, {78.0, 13.0});  // over the gap; between the two outermost screws
  const double plain = 1000.0 * 1.75 / (190e3 * 11.0 * 3.5 * 3.5 * 3.5 / 12.0);
  CHECK(strains[0] == Approx(plain).epsilon(0.1));  // holes on both sides draw the stress to the middle or from it
  CHECK(std::abs(strains[1]) < 0.1 * strains[0]);   // nearly all is in the bone there
}

TEST_CASE("the intact bone's axial stiffness is E A / L", "[trends]") {
  Benches benches(0.5, {});
  // 20 GPa, 13 mm across, wall 2.2, 160 long: 20000 x 74.644 / 160.
  CHECK(benches.intact_axial_stiffness(bench::closed_radius_front) == Approx(9330.5).epsilon(1e-3));
}
