#include "cases/page/cloud_json.h"
#include "cases/text/digits.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>

namespace gapstrain::cases {

namespace {

TEST_CASE("a number kept in five digits is printed with three as it itself is") {
  // Rounded to five digits these come to lie half-way between two numbers of three.
  for (const double value : {2.71498, 2.71499999, 0.0124549, 1234.49999, -2.71498, 99.9499, 1.124999e-7})
    CHECK(three_digits(short_number(value)) == three_digits(value));
  std::mt19937 random(1);
  std::uniform_real_distribution<double> mantissa(1.0, 10.0), power(-6.0, 8.0);
  for (int k = 0; k < 20000; ++k) {
    const double value = mantissa(random) * std::pow(10.0, std::round(power(random)));
    const double kept = short_number(value);
    REQUIRE(three_digits(kept) == three_digits(value));
    REQUIRE(std::abs(kept - value) <= 1.01e-4 * std::abs(value));
  }
  CHECK(short_number(0.0) == 0.0);
}

TEST_CASE("beyond the most points a page shows what was asked for, and of the others every so manieth") {
  CHECK(shown_rows(5, {3}, 5) == std::vector<std::size_t>{0, 1, 2, 3, 4});
  CHECK(shown_rows(10, {3, 7}, 5) == std::vector<std::size_t>{0, 2, 3, 4, 6, 7, 8});
  CHECK(shown_rows(1'000'000, {17}).size() <= most_points + 1);
  CHECK(shown_rows(0, {}, 5).empty());
}

}  // namespace

}  // namespace gapstrain::cases
