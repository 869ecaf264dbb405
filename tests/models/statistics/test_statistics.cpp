#include "models/statistics/design.h"
#include "models/statistics/distribution.h"
#include "models/statistics/statistics.h"
#include "tests/framework/numbers.h"

#include <boost/math/distributions/chi_squared.hpp>
#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>

using namespace gapstrain::models;

using gapstrain::tests::missing;
using gapstrain::tests::vector;

namespace {

// A product of three lognormals is lognormal: the variances of the logarithms add up.
struct Product {
  std::vector<Lognormal> factors{{100.0, 20.0}, {0.5, 0.25}, {3.0, 0.3}};

  Eigen::VectorXd sample(const Design& design) const {
    Eigen::VectorXd outcomes = Eigen::VectorXd::Ones(design.points());
    for (Eigen::Index i = 0; i < design.points(); ++i) {
      const Eigen::VectorXd point = design.point(i);
      for (std::size_t j = 0; j < factors.size(); ++j)
        outcomes[i] *= quantile({factors[j]}, point[static_cast<Eigen::Index>(j)]);
    }
    return outcomes;
  }

  double below(double value) const {
    double middle = 0.0, variance = 0.0;
    for (const auto& [mean, deviation] : factors) {
      const double part = std::log(1.0 + std::pow(deviation / mean, 2));
      variance += part;
      middle += std::log(mean) - 0.5 * part;
    }
    return 0.5 * std::erfc((middle - std::log(value)) / std::sqrt(2.0 * variance));
  }
};

// By how many standard deviations of a random sample's the probabilities of the percentiles miss, squared and
// summed over seeds: sqrt(p (1 - p) / points) is the deviation of the share of a sample below a true percentile.
double squared_errors(DesignKind kind, double probability, Eigen::Index points, int seeds, double* worst) {
  const Product product;
  double sum = 0.0;
  for (int seed = 1; seed <= seeds; ++seed) {
    const Design design(kind, points, 3, static_cast<std::uint64_t>(seed));
    const double found = percentiles(product.sample(design), {probability}).values[0];
    const double error = (product.below(found) - probability) /
                         std::sqrt(probability * (1.0 - probability) / static_cast<double>(points));
    sum += error * error;
    *worst = std::max(*worst, std::abs(error));
  }
  return sum;
}

double binomial_mass(int runs, int hits, double share) {
  return std::exp(std::lgamma(runs + 1.0) - std::lgamma(hits + 1.0) - std::lgamma(runs - hits + 1.0) +
                  hits * std::log(share) + (runs - hits) * std::log1p(-share));
}

}  // namespace

TEST_CASE("percentiles are linear between order statistics", "[models][studies]") {
  // Type 7 by hand: of n values the place is (n - 1) p, counted from zero.
  const auto found = percentiles(vector({4.0, 1.0, 3.0, 2.0}), {0.0, 0.25, 0.5, 0.9, 1.0});
  CHECK(found.counted == 4);
  CHECK(found.missing == 0);
  const double expected[] = {1.0, 1.75, 2.5, 3.7, 4.0};
  for (std::size_t i = 0; i < 5; ++i) CHECK(found.values[i] == Approx(expected[i]).epsilon(1e-14));
  CHECK(percentiles(vector({6.0}), {0.1, 0.9}).values == std::vector<double>{6.0, 6.0});
}

TEST_CASE("missing outcomes are left out of statistics and counted", "[models][studies]") {
  const Eigen::VectorXd gappy = vector({missing, 4.0, 1.0, missing, 3.0, 2.0});
  const auto found = percentiles(gappy, {0.25});
  CHECK(found.values[0] == Approx(1.75));
  CHECK(found.counted == 4);
  CHECK(found.missing == 2);
  const Share share = share_where(gappy, [](double outcome) { return outcome < 2.5; });
  CHECK(share.share == 0.5);
  CHECK(share.counted == 4);
  CHECK(share.missing == 2);

  const auto nothing = percentiles(vector({missing, missing}), {0.5});
  CHECK(nothing.values.empty());
  CHECK(nothing.missing == 2);
  CHECK_THROWS_AS(share_where(vector({missing}), [](double) { return true; }), std::invalid_argument);
}

TEST_CASE("statistics refuse what they cannot take", "[models][studies]") {
  CHECK_THROWS_AS(percentiles(vector({1.0, std::numeric_limits<double>::infinity()}), {0.5}),
                  std::invalid_argument);
  for (const double probability : {-0.1, 1.1, missing})
    CHECK_THROWS_AS(percentiles(vector({1.0, 2.0}), {probability}), std::invalid_argument);
  CHECK_THROWS_AS(share_of(0, 0), std::invalid_argument);
  CHECK_THROWS_AS(share_of(-1, 3), std::invalid_argument);
  CHECK_THROWS_AS(share_of(4, 3), std::invalid_argument);
  for (const double confidence : {0.0, 1.0, missing})
    CHECK_THROWS_AS(share_of(1, 3, confidence), std::invalid_argument);
}

TEST_CASE("Monte Carlo percentiles of a product are within their sampling error", "[models][studies]") {
  constexpr int seeds = 40;
  const boost::math::chi_squared sum(seeds);
  for (const double probability : {0.05, 0.5, 0.95}) {
    CAPTURE(probability);
    double worst = 0.0;
    const double squares = squared_errors(DesignKind::random, probability, 2000, seeds, &worst);
    CHECK(worst < 4.5);                                  // of 40 normal errors once in four thousand
    CHECK(squares > boost::math::quantile(sum, 0.001));  // and as large as chance makes it
    CHECK(squares < boost::math::quantile(sum, 0.999));
  }
}

TEST_CASE("even designs give percentiles with less error than sampling's", "[models][studies]") {
  // Measured over 400 seeds: variances of 0.28 to 0.47 and of 0.06 to 0.11 of a random sample's.
  constexpr int seeds = 100;
  for (const double probability : {0.05, 0.5, 0.95}) {
    double worst = 0.0;
    CAPTURE(probability);
    CHECK(squared_errors(DesignKind::latin_hypercube, probability, 2000, seeds, &worst) < 0.75 * seeds);
    CHECK(squared_errors(DesignKind::sobol, probability, 2048, seeds, &worst) < 0.2 * seeds);
  }
}

TEST_CASE("the interval of a share covers the true share as often as it says", "[models][studies]") {
  for (const int runs : {1, 7, 30, 100})
    for (const double confidence : {0.8, 0.95, 0.99}) {
      std::vector<Share> intervals;
      for (int hits = 0; hits <= runs; ++hits) intervals.push_back(share_of(hits, runs, confidence));
      for (int step = 1; step < 200; ++step) {
        const double truth = step / 200.0;
        double covered = 0.0;
        for (int hits = 0; hits <= runs; ++hits) {
          const Share& share = intervals[static_cast<std::size_t>(hits)];
          if (share.low <= truth && truth <= share.high) covered += binomial_mass(runs, hits, truth);
        }
        CAPTURE(runs, confidence, truth);
        REQUIRE(covered >= confidence - 1e-12);
      }
    }
}

TEST_CASE("the ends of a share's interval leave half the doubt on either side", "[models][studies]") {
  for (const int runs : {7, 30, 100})
    for (int hits = 1; hits < runs; ++hits) {
      const Share share = share_of(hits, runs);
      double at_most = 0.0, at_least = 0.0;
      for (int i = 0; i <= hits; ++i) at_most += binomial_mass(runs, i, share.high);
      for (int i = hits; i <= runs; ++i) at_least += binomial_mass(runs, i, share.low);
      REQUIRE(at_most == Approx(0.025).epsilon(1e-8));
      REQUIRE(at_least == Approx(0.025).epsilon(1e-8));
    }
  CHECK(share_of(0, 50).low == 0.0);
  CHECK(share_of(0, 50).high == Approx(1.0 - std::pow(0.025, 1.0 / 50.0)));
  CHECK(share_of(50, 50).low == Approx(std::pow(0.025, 1.0 / 50.0)));
  CHECK(share_of(50, 50).high == 1.0);
}
