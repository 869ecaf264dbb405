#include "models/statistics/design.h"
#include "models/statistics/effects.h"
#include "tests/framework/numbers.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <numeric>
#include <stdexcept>

using namespace gapstrain::models;

using gapstrain::tests::missing;
using gapstrain::tests::vector;

namespace {

Eigen::MatrixXd table(const Design& design) {
  Eigen::MatrixXd points(design.points(), design.factors());
  for (Eigen::Index i = 0; i < design.points(); ++i) points.row(i) = design.point(i);
  return points;
}

}  // namespace

TEST_CASE("the main effect of a factor is the mean outcome at each of its levels", "[models][studies]") {
  const auto groups = means_at_levels(vector({2.0, 1.0, 2.0, 3.0, 1.0, 2.0, 5.0}),
                                      vector({5.0, 1.0, 7.0, 4.0, missing, 9.0, missing}), {1.0, 2.0, 3.0, 5.0});
  REQUIRE(groups.size() == 4);
  CHECK(groups[0].mean == 1.0);
  CHECK(groups[0].counted == 1);
  CHECK(groups[0].missing == 1);
  CHECK_FALSE(groups[0].standard_error);
  CHECK(groups[1].mean == 7.0);
  CHECK(groups[1].counted == 3);
  CHECK(*groups[1].standard_error == Approx(2.0 / std::sqrt(3.0)));  // sample deviation of 5, 7, 9 is 2
  CHECK(groups[2].low == 3.0);
  CHECK(groups[2].high == 3.0);
  CHECK_FALSE(groups[3].mean);
  CHECK(groups[3].missing == 1);
}

TEST_CASE("bins of a continuous factor hold equally many runs, whatever came of them", "[models][studies]") {
  const Eigen::VectorXd factor = table(Design(DesignKind::latin_hypercube, 103, 1, 4)).col(0);
  Eigen::VectorXd outcomes = 3.0 * factor;
  const auto complete = means_in_bins(factor, outcomes, 10);
  REQUIRE(complete.size() == 10);
  for (std::size_t i = 0; i < 10; ++i) {
    CHECK((complete[i].counted == 10 || complete[i].counted == 11));
    CHECK(*complete[i].mean > 3.0 * complete[i].low);
    CHECK(*complete[i].mean < 3.0 * complete[i].high);
    if (i > 0) CHECK(complete[i].low > complete[i - 1].high);
  }
  for (Eigen::Index i = 0; i < factor.size(); ++i)
    if (factor[i] > 0.8) outcomes[i] = missing;
  const auto gappy = means_in_bins(factor, outcomes, 10);
  for (std::size_t i = 0; i < 10; ++i) {
    CHECK(gappy[i].low == complete[i].low);
    CHECK(gappy[i].counted + gappy[i].missing == complete[i].counted);
  }
  CHECK_FALSE(gappy[9].mean);
  CHECK(means_in_bins(vector({1.0, 2.0}), vector({1.0, 2.0}), 10).size() == 2);
  CHECK(means_in_bins(Eigen::VectorXd(), Eigen::VectorXd(), 10).empty());
}

TEST_CASE("the standard error of a main effect is that of chance", "[models][studies]") {
  // Outcome: factor 0 plus uniform noise of deviation sqrt(1/12); mean over levels known.
  const Eigen::MatrixXd points = table(Design(DesignKind::random, 4000, 2, 6));
  const Eigen::VectorXd factor = (points.col(0).array() * 4.0).floor();
  const auto groups = means_at_levels(factor, factor + points.col(1), {0.0, 1.0, 2.0, 3.0});
  Eigen::Index counted = 0;
  for (const auto& group : groups) {
    CHECK(*group.standard_error ==
          Approx(std::sqrt(1.0 / 12.0 / static_cast<double>(group.counted))).epsilon(0.05));
    CHECK(std::abs(*group.mean - group.low - 0.5) < 4.0 * *group.standard_error);
    counted += group.counted;
  }
  CHECK(counted == 4000);
}

TEST_CASE("a tornado shows the widest swing first", "[models][studies]") {
  // Mean of the lowest and highest tenth of a Latin hypercube: 0.05 and 0.95. The other factors add noise to
  // either mean, of 200 runs.
  const Eigen::Vector4d slopes(0.5, -3.0, 0.0, 2.0);
  const Eigen::MatrixXd points = table(Design(DesignKind::latin_hypercube, 2000, 4, 12));
  const auto [swings, counted, dropped] = tornado(points, points * slopes);
  REQUIRE(swings.size() == 4);
  CHECK(counted == 2000);
  CHECK(dropped == 0);
  CHECK(swings[0].factor == 1);
  CHECK(swings[1].factor == 3);
  CHECK(swings[2].factor == 0);
  CHECK(swings[3].factor == 2);
  for (const Swing& swing : swings) {
    const double slope = slopes[swing.factor];
    const double noise = std::sqrt((slopes.squaredNorm() - slope * slope) / 12.0 * 2.0 / 200.0);
    CAPTURE(swing.factor);
    CHECK(swing.counted_low == 200);
    CHECK(swing.counted_high == 200);
    CHECK(std::abs(swing.span() - 0.9 * slope) < 4.0 * noise);
    CHECK(*swing.rank_correlation * slope >= 0.0);
  }
}

TEST_CASE("a tornado takes a factor of few levels at its outer levels", "[models][studies]") {
  Eigen::MatrixXd factors(40, 2);
  Eigen::VectorXd outcomes(40);
  for (Eigen::Index i = 0; i < 40; ++i) {
    factors(i, 0) = static_cast<double>(i % 4);
    factors(i, 1) = 1.0;
    outcomes[i] = 10.0 * factors(i, 0) + static_cast<double>(i / 20);
  }
  const auto swings = tornado(factors, outcomes).swings;
  CHECK(swings[0].counted_low == 10);
  CHECK(swings[0].counted_high == 10);
  CHECK(swings[0].at_low == Approx(0.5));
  CHECK(swings[0].at_high == Approx(30.5));
  // A factor that is the same in every run has no effect and no correlation.
  CHECK(swings[1].span() == 0.0);
  CHECK_FALSE(swings[1].rank_correlation);
}

TEST_CASE("a rank correlation knows order only", "[models][studies]") {
  const Eigen::VectorXd factor = table(Design(DesignKind::random, 200, 1, 2)).col(0);
  const auto correlation = [](const Eigen::VectorXd& a, const Eigen::VectorXd& b) {
    return *tornado(a, b).swings[0].rank_correlation;
  };
  CHECK(correlation(factor, (20.0 * factor).array().exp().matrix()) == Approx(1.0).epsilon(1e-12));
  CHECK(correlation(factor, factor.array().inverse().matrix()) == Approx(-1.0).epsilon(1e-12));
  // Without ties 1 - 6 sum d^2 / (n (n^2 - 1)), here with differences 1, 1, 1, 1, 0.
  CHECK(correlation(vector({10.0, 20.0, 30.0, 40.0, 50.0}), vector({0.2, 0.1, 0.4, 0.3, 0.5})) ==
        Approx(1.0 - 6.0 * 4.0 / (5.0 * 24.0)));
  // Ties at their mean rank, by hand: ranks 1.5, 1.5, 3, 4 against 1, 2, 3, 4 give 4.5 / sqrt(4.5 * 5).
  CHECK(correlation(vector({7.0, 7.0, 8.0, 9.0}), vector({1.0, 2.0, 3.0, 4.0})) ==
        Approx(4.5 / std::sqrt(4.5 * 5.0)));
}

TEST_CASE("a tornado leaves out runs without outcome and counts them", "[models][studies]") {
  const Eigen::MatrixXd points = table(Design(DesignKind::random, 100, 3, 1));
  Eigen::VectorXd outcomes = points.rowwise().sum();
  for (Eigen::Index i = 60; i < 100; ++i) outcomes[i] = missing;
  const auto gappy = tornado(points, outcomes), complete = tornado(points.topRows(60), outcomes.head(60));
  CHECK(gappy.counted == 60);
  CHECK(gappy.missing == 40);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(gappy.swings[i].factor == complete.swings[i].factor);
    CHECK(gappy.swings[i].at_low == complete.swings[i].at_low);
    CHECK(gappy.swings[i].rank_correlation == complete.swings[i].rank_correlation);
  }
  outcomes.setConstant(missing);
  CHECK(tornado(points, outcomes).swings.empty());
}

TEST_CASE("effects refuse rows that do not fit", "[models][studies]") {
  const Eigen::VectorXd two = vector({1.0, 2.0});
  CHECK_THROWS_AS(means_at_levels(two, vector({1.0}), {1.0, 2.0}), std::invalid_argument);
  CHECK_THROWS_AS(means_at_levels(two, two, {1.0}), std::invalid_argument);
  CHECK_THROWS_AS(means_in_bins(two, two, 0), std::invalid_argument);
  CHECK_THROWS_AS(means_in_bins(vector({1.0, missing}), two, 1), std::invalid_argument);
  CHECK_THROWS_AS(tornado(vector({1.0, missing}), two), std::invalid_argument);
  CHECK_THROWS_AS(tornado(two, vector({1.0, std::numeric_limits<double>::infinity()})), std::invalid_argument);
}
