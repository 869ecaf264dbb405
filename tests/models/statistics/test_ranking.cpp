#include "models/statistics/ranking.h"

#include "tests/framework/numbers.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <random>

namespace gapstrain {

using namespace models;  // NOLINT: this file is nothing but figures

using tests::missing;

namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();

// Of few values, so that ties are many, and some missing.
FigureColumn random_column(std::mt19937& random, std::size_t rows) {
  FigureColumn column;
  for (std::size_t row = 0; row < rows; ++row) {
    const int value = std::uniform_int_distribution<int>(-5, 6)(random);
    column.push_back(value == 6 ? missing : value);
  }
  return column;
}

std::vector<char> random_flags(std::mt19937& random, std::size_t rows) {
  std::vector<char> flags;
  for (std::size_t row = 0; row < rows; ++row) flags.push_back(random() % 4 != 0);
  return flags;
}

// Whether row `one` is placed before row `two`, key after key.
bool comes_before(std::size_t one, std::size_t two, const std::vector<char>& kept,
                  const std::vector<FigureColumn>& keys) {
  if (kept[one] != kept[two]) return kept[one] != 0;
  for (const auto& key : keys) {
    const double a = std::isnan(key[one]) ? infinite : key[one], b = std::isnan(key[two]) ? infinite : key[two];
    if (a < b) return true;
    if (b < a) return false;
  }
  return one < two;
}

}  // namespace

TEST_CASE("a figure keeps its limits when it lies between or on them", "[models][studies][ranking]") {
  CHECK(keeps({1.0, 1.5, 2.0, 0.9, 2.1, missing, -infinite}, 1.0, 2.0) == std::vector<char>{1, 1, 1, 0, 0, 0, 0});
  CHECK(keeps({-7.0, missing, infinite}, -infinite, infinite) == std::vector<char>{1, 0, 1});
  CHECK(keeps({}, 0.0, 1.0).empty());
}

TEST_CASE("rows are ranked by what they keep, then key by key, then by place", "[models][studies][ranking]") {
  const std::vector<char> kept = {0, 1, 1, 1, 1, 1};
  const std::vector<FigureColumn> keys = {{0.0, 2.0, 1.0, missing, 1.0, 2.0}, {0.0, 5.0, 4.0, 0.0, 3.0, 5.0}};
  CHECK(best_rows(kept, keys, 6) == std::vector<std::size_t>{4, 2, 1, 5, 3, 0});
  CHECK(best_rows(kept, keys, 2) == std::vector<std::size_t>{4, 2});
  CHECK(best_rows(kept, keys, 100).size() == 6);
  CHECK(best_rows(kept, keys, 0).empty());
  CHECK(best_rows({1, 1, 1}, {}, 2) == std::vector<std::size_t>{0, 1});
}

TEST_CASE("the best rows are the first of all rows in order", "[models][studies][ranking]") {
  std::mt19937 random(1);
  for (int round = 0; round < 100; ++round) {
    const std::size_t rows = 1 + random() % 60;
    const auto kept = random_flags(random, rows);
    const std::vector<FigureColumn> keys = {random_column(random, rows), random_column(random, rows)};
    std::vector<std::size_t> expected(rows);
    std::iota(expected.begin(), expected.end(), std::size_t{0});
    // Insertion by pairwise comparison alone.
    for (std::size_t k = 1; k < rows; ++k)
      for (std::size_t at = k; at > 0 && comes_before(expected[at], expected[at - 1], kept, keys); --at)
        std::swap(expected[at], expected[at - 1]);
    const std::size_t count = random() % (rows + 1);
    expected.resize(count);
    CHECK(best_rows(kept, keys, count) == expected);
  }
}

TEST_CASE("the Pareto front has every row that is on it, once", "[models][studies][ranking]") {
  std::mt19937 random(2);
  for (int round = 0; round < 200; ++round) {
    const std::size_t rows = random() % 40;
    const auto allowed = random_flags(random, rows);
    const auto x = random_column(random, rows), y = random_column(random, rows);
    const auto counts = [&](std::size_t row) {
      return allowed[row] != 0 && !std::isnan(x[row]) && !std::isnan(y[row]);
    };
    std::vector<std::size_t> expected;
    for (std::size_t row = 0; row < rows; ++row) {
      if (!counts(row)) continue;
      bool is_bettered = false;
      for (std::size_t other = 0; other < rows && !is_bettered; ++other) {
        if (other == row || !counts(other)) continue;
        const bool is_no_worse = x[other] <= x[row] && y[other] <= y[row];
        const bool is_equal = x[other] == x[row] && y[other] == y[row];
        is_bettered = is_no_worse && (!is_equal || other < row);
      }
      if (!is_bettered) expected.push_back(row);
    }
    std::sort(expected.begin(), expected.end(), [&](std::size_t a, std::size_t b) { return x[a] < x[b]; });
    CHECK(pareto_front(allowed, x, y) == expected);
  }
}

TEST_CASE("a front may be of one row, or of none", "[models][studies][ranking]") {
  CHECK(pareto_front({1, 1}, {1.0, 1.0}, {2.0, 2.0}) == std::vector<std::size_t>{0});
  CHECK(pareto_front({0, 1}, {1.0, missing}, {2.0, 2.0}).empty());
  CHECK(pareto_front({}, {}, {}).empty());
  CHECK(pareto_front({1, 1, 1}, {3.0, 1.0, 2.0}, {1.0, 3.0, 2.0}) == std::vector<std::size_t>{1, 2, 0});
}

}  // namespace gapstrain
