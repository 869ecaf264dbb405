#include "models/statistics/distribution.h"
#include "tests/framework/numbers.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>

using namespace gapstrain::models;

using gapstrain::tests::missing;

namespace {

constexpr double none = -std::numeric_limits<double>::infinity();
constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double probabilities[] = {1e-12, 1e-4, 0.025, 0.3, 0.5, 0.61, 0.975, 0.9999};

double normal_below(double z) { return 0.5 * std::erfc(-z / std::numbers::sqrt2); }

// Closed forms of the probability that a quantity stays below a value.
double below(const Uniform& shape, double value) { return (value - shape.low) / (shape.high - shape.low); }
double below(const Normal& shape, double value) {
  return normal_below((value - shape.mean) / shape.standard_deviation);
}
double below(const Lognormal& shape, double value) {
  const double variance = std::log(1.0 + std::pow(shape.standard_deviation / shape.mean, 2));
  return normal_below((std::log(value / shape.mean) + 0.5 * variance) / std::sqrt(variance));
}
double below(const Triangular& shape, double value) {
  const double width = shape.high - shape.low;
  if (value < shape.mode) return std::pow(value - shape.low, 2) / (width * (shape.mode - shape.low));
  return 1.0 - std::pow(shape.high - value, 2) / (width * (shape.high - shape.mode));
}

template <typename Shape>
void check_round_trip(const Shape& shape) {
  for (const double probability : probabilities)
    CHECK(below(shape, quantile({shape}, probability)) == Approx(probability).epsilon(1e-9).margin(1e-15));
}

// Between bounds that are both within the shape's reach.
template <typename Shape>
void check_truncated(const Shape& shape, double least, double most) {
  const double under = below(shape, least), inside = below(shape, most) - under;
  for (const double probability : {1e-6, 0.1, 0.5, 0.77, 0.999}) {
    const double value = quantile({shape, least, most}, probability);
    CAPTURE(probability, value);
    CHECK(value > least);
    CHECK(value < most);
    CHECK((below(shape, value) - under) / inside == Approx(probability).epsilon(1e-7));
  }
}

}  // namespace

TEST_CASE("quantiles invert the closed forms of their distributions", "[models][studies]") {
  check_round_trip(Uniform{-3.0, 8.0});
  check_round_trip(Normal{17.0, 2.5});
  check_round_trip(Lognormal{100.0, 35.0});
  check_round_trip(Triangular{2.0, 3.0, 7.0});
  check_round_trip(Triangular{2.0, 2.0, 7.0});
  check_round_trip(Triangular{2.0, 7.0, 7.0});
  // The usual table's value, as in M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, table 26.5.
  CHECK(quantile({Normal{0.0, 1.0}}, 0.975) == Approx(1.959964).epsilon(1e-7));
  CHECK(quantile({Uniform{-3.0, 8.0}}, 0.25) == Approx(-0.25).epsilon(1e-14));
  CHECK(quantile({Triangular{2.0, 3.0, 7.0}}, 0.2) == Approx(3.0).epsilon(1e-14));
  CHECK(quantile({Lognormal{100.0, 35.0}}, 0.5) == Approx(100.0 / std::sqrt(1.0 + 0.35 * 0.35)).epsilon(1e-12));
}

TEST_CASE("a lognormal's mean and deviation are those of the quantity itself", "[models][studies]") {
  for (const Lognormal shape : {Lognormal{100.0, 10.0}, Lognormal{0.3, 0.15}}) {
    // Its moments by the midpoint rule over probabilities, whose error a million points leave below these bounds.
    constexpr int cells = 1000000;
    double sum = 0.0, squares = 0.0;
    for (int i = 0; i < cells; ++i) {
      const double value = quantile({shape}, (i + 0.5) / cells);
      sum += value;
      squares += value * value;
    }
    const double mean = sum / cells;
    CHECK(mean == Approx(shape.mean).epsilon(1e-5));
    CHECK(std::sqrt(squares / cells - mean * mean) == Approx(shape.standard_deviation).epsilon(1e-3));
  }
}

TEST_CASE("truncation scales the rest of a distribution up", "[models][studies]") {
  check_truncated(Uniform{0.0, 10.0}, 2.0, 3.0);
  check_truncated(Normal{10.0, 2.0}, 7.0, 11.0);
  check_truncated(Normal{10.0, 2.0}, 11.0, 13.0);
  check_truncated(Lognormal{10.0, 6.0}, 1.0, 9.0);
  check_truncated(Lognormal{10.0, 6.0}, 12.0, 40.0);
  check_truncated(Triangular{0.0, 4.0, 10.0}, 1.0, 6.0);
  check_truncated(Triangular{0.0, 4.0, 10.0}, 7.0, 9.5);
  // Half a normal: its median is the whole one's upper quartile.
  CHECK(quantile({Normal{5.0, 1.0}, 5.0, infinite}, 0.5) == Approx(quantile({Normal{5.0, 1.0}}, 0.75)));
  CHECK(quantile({Normal{5.0, 1.0}, none, 5.0}, 0.5) == Approx(quantile({Normal{5.0, 1.0}}, 0.25)));
}

TEST_CASE("bounds beyond a distribution's reach change nothing", "[models][studies]") {
  for (const double probability : probabilities) {
    CHECK(quantile({Uniform{1.0, 2.0}, -5.0, 9.0}, probability) == quantile({Uniform{1.0, 2.0}}, probability));
    CHECK(quantile({Lognormal{1.0, 2.0}, -5.0, infinite}, probability) ==
          quantile({Lognormal{1.0, 2.0}}, probability));
    CHECK(quantile({Triangular{0.0, 1.0, 2.0}, 0.0, 2.0}, probability) ==
          quantile({Triangular{0.0, 1.0, 2.0}}, probability));
  }
}

TEST_CASE("a distribution cut off far in a tail keeps its digits", "[models][studies]") {
  // Ten deviations out 1 - F is 1e-23 and lost beside one.
  const auto above = [](double z) { return 0.5 * std::erfc(z / std::numbers::sqrt2); };
  for (const double probability : {0.01, 0.5, 0.99}) {
    const double upper = quantile({Normal{0.0, 1.0}, 10.0, 12.0}, probability);
    CHECK((above(10.0) - above(upper)) / (above(10.0) - above(12.0)) == Approx(probability).epsilon(1e-9));
    CHECK(quantile({Normal{0.0, 1.0}, -12.0, -10.0}, 1.0 - probability) == Approx(-upper).epsilon(1e-12));
  }
}

TEST_CASE("wrong distributions and probabilities are refused with a sentence", "[models][studies]") {
  const Distribution wrong[] = {{Uniform{2.0, 2.0}},
                                {Uniform{missing, 2.0}},
                                {Uniform{0.0, infinite}},
                                {Normal{0.0, 0.0}},
                                {Normal{missing, 1.0}},
                                {Normal{0.0, -1.0}},
                                {Lognormal{0.0, 1.0}},
                                {Lognormal{1.0, 0.0}},
                                {Lognormal{-1.0, 1.0}},
                                {Lognormal{1.0, infinite}},
                                {Lognormal{1e-200, 1e200}},
                                {Lognormal{1e200, 1e-200}},
                                {Triangular{0.0, 3.0, 2.0}},
                                {Triangular{1.0, 1.0, 1.0}},
                                {Triangular{0.0, missing, 2.0}},
                                {Normal{}, 1.0, 1.0},
                                {Normal{}, 2.0, 1.0},
                                {Normal{}, missing, 1.0},
                                {Uniform{0.0, 1.0}, 1.0, 2.0},
                                {Lognormal{1.0, 1.0}, -2.0, 0.0},
                                {Normal{}, 60.0, 61.0}};
  for (const Distribution& distribution : wrong) {
    CHECK_THROWS_AS(check_distribution(distribution), std::invalid_argument);
    CHECK_THROWS_AS(quantile(distribution, 0.5), std::invalid_argument);
  }
  for (const double probability : {0.0, 1.0, -0.1, 1.1, missing})
    CHECK_THROWS_AS(quantile({Normal{}}, probability), std::invalid_argument);
  CHECK_THROWS_WITH(check_distribution({Triangular{0.0, 3.0, 2.0}}),
                    "A triangular distribution's mode must not be outside its low and high.");
  CHECK_NOTHROW(check_distribution({Normal{}, 10.0, 11.0}));
}
