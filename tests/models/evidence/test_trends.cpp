// How statements are judged, that the bench models are sound, and that they obey the closed forms of a plate that
// bridges a gap between rigid fragments. Whether papers agree is a result, not a test.
#include "models/evidence/trends.h"

#include <catch2/catch.hpp>

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
    return judge(trend, std::move(measures), {}).verdict;
  };
  CHECK(verdict({{"a", 1.6, 1.6, 2.2}, {"b", 0.9, {}, 0.9}, {"free", 100.0}}) == Agreement::agrees);
  CHECK(verdict({{"a", 1.6, 1.6, 2.2}, {"b", 0.91, {}, 0.9}}) == Agreement::disagrees);
  CHECK(verdict({{"a", 1.59, 1.6, 2.2}}) == Agreement::disagrees);
  CHECK(verdict({{"a", 2.21, 1.6, 2.2}}) == Agreement::disagrees);
  CHECK(judge(trend, {{"a", 1.0, 0.9, {}}}, {}).why == "as expected");
  CHECK(judge(trend, {{"a", 0.8, 0.9, {}}}, {}).why == "not as expected");
  CHECK(judge(trend, {{"a", std::numeric_limits<double>::quiet_NaN(), 0.9, 1.1}}, {}).verdict ==
        Agreement::disagrees);
}

TEST_CASE("without a bound, or with an outcome in doubt, nothing is compared", "[trends]") {
  const Trend trend = bounded_trend();
  CHECK(judge(trend, {}, {}).verdict == Agreement::not_comparable);
  CHECK(judge(trend, {{"free", 1.0}}, {}).verdict == Agreement::not_comparable);
  const TrendFinding doubtful = judge(trend, {{"a", 1.0, 0.9, 1.1}}, {"it turns too far"});
  CHECK(doubtful.verdict == Agreement::not_comparable);
  CHECK(doubtful.why.find("it turns too far") != std::string::npos);
}

TEST_CASE("every bench model is sound at every mesh, and each is asked about", "[trends]") {
  std::set<std::string_view> asked;
  for (const auto& trend : published_trends()) asked.insert(trend.models.begin(), trend.models.end());
  const auto names = bench_model_names();
  CHECK(asked == std::set<std::string_view>(names.begin(), names.end()));
  for (const auto& name : names)
    for (const double refinement : {0.25, 1.0, 4.0}) {
      const auto problems = check(bench_model(name, refinement).construct);
      INFO(name);
      CHECK(problems.empty());
    }
}

TEST_CASE("every statement that disagrees or cannot be compared would say why", "[trends]") {
  for (const auto& trend : published_trends()) {
    INFO(trend.statement);
    CHECK_FALSE(trend.source.empty());
    CHECK(bool(trend.measure) != trend.models.empty());
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
