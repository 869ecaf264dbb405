#include "models/statistics/design.h"
#include "models/statistics/saltelli_design.h"

#include <catch2/catch.hpp>

#include <stdexcept>

using namespace gapstrain::models;

TEST_CASE("a Saltelli design changes one factor of A at a time to that of B", "[models][studies]") {
  constexpr Eigen::Index base_points = 37, factors = 5;
  for (const std::uint64_t seed : {0U, 8U}) {
    const SaltelliDesign design(base_points, factors, seed);
    REQUIRE(design.points() == base_points * (factors + 2));
    const Design sequence(DesignKind::sobol, base_points, 2 * factors, seed);
    for (Eigen::Index base = base_points - 1; base >= 0; --base) {
      const Eigen::Index first = base * (factors + 2);
      const Eigen::VectorXd a = design.point(first), b = design.point(first + 1);
      Eigen::VectorXd both(2 * factors);
      both << a, b;
      REQUIRE(both == sequence.point(base));
      for (Eigen::Index i = 0; i < factors; ++i) {
        Eigen::VectorXd expected = a;
        expected[i] = b[i];
        REQUIRE(design.point(first + 2 + i) == expected);
      }
    }
  }
}

TEST_CASE("a Saltelli design that cannot be is refused", "[models][studies]") {
  CHECK_THROWS_AS(SaltelliDesign(0, 3, 1), std::invalid_argument);
  CHECK_THROWS_AS(SaltelliDesign(8, 0, 1), std::invalid_argument);
  CHECK_THROWS_AS(SaltelliDesign(8, SaltelliDesign::most_factors + 1, 1), std::invalid_argument);
  CHECK_THROWS_AS(SaltelliDesign(Design::most_points / 5 + 1, 3, 1), std::invalid_argument);
  CHECK(SaltelliDesign(Design::most_points / 5, 3, 1).points() <= Design::most_points);
}
