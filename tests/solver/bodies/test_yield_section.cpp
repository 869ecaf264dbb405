#include "solver/bodies/yield_section.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace gapstrain;
using solver::demand;
using solver::Resultants;

TEST_CASE("each full plastic resultant by itself asks for the whole section", "[solver][yield]") {
  for (int k = 0; k < 6; ++k)
    for (const double sign : {-1.0, 1.0})
      CHECK(demand(sign * Resultants::Unit(k)).value == Approx(1.0).epsilon(0.011));
}

TEST_CASE("axial force and moment of a rectangle: m + n^2 = 1", "[solver][yield]") {
  for (const double n : {0.0, 0.2, 0.5, 0.8}) {
    Resultants shares = Resultants::Zero();
    shares(0) = n;
    shares(4) = 1.0 - n * n;
    CHECK(demand(shares).value == Approx(1.0).epsilon(1e-3));
  }
}

// With the neutral axis at R sin(a): n = 2 / pi (a + sin a cos a), m = cos^3 a.
TEST_CASE("axial force and moment of a circle are met from the safe side within 3 %", "[solver][yield]") {
  for (double a = 0.05; a < 1.5; a += 0.1) {
    Resultants shares = Resultants::Zero();
    shares(0) = 2.0 / std::numbers::pi * (a + std::sin(a) * std::cos(a));
    shares(4) = 0.6 * std::pow(std::cos(a), 3);
    shares(5) = 0.8 * std::pow(std::cos(a), 3);
    INFO(a);
    CHECK(demand(shares).value > 0.9995);
    CHECK(demand(shares).value < 1.03);
  }
}

TEST_CASE("shear and torsion take from moment what von Mises leaves", "[solver][yield]") {
  Resultants shares = Resultants::Zero();
  shares << 0.0, 0.3, 0.4, 0.5, std::sqrt(1.0 - 0.5), 0.0;
  CHECK(demand(shares).value == Approx(1.0).epsilon(1e-3));
}

TEST_CASE("the gradient and the curvature of demand are its derivatives; it is of degree one", "[solver][yield]") {
  Resultants shares;
  shares << 0.3, -0.2, 0.1, 0.4, -0.6, 0.25;
  const auto found = demand(shares);
  CHECK(found.gradient.dot(shares) == Approx(found.value).epsilon(1e-3));
  CHECK(demand(3.0 * shares).value == Approx(3.0 * found.value).epsilon(1e-3));
  constexpr double step = 1e-5;
  for (int k = 0; k < 6; ++k) {
    const auto above = demand(shares + step * Resultants::Unit(k)),
               below = demand(shares - step * Resultants::Unit(k));
    CHECK((above.value - below.value) / (2.0 * step) == Approx(found.gradient(k)).margin(1e-8));
    CHECK(((above.gradient - below.gradient) / (2.0 * step) - found.curvature.col(k)).norm() < 1e-7);
  }
}

TEST_CASE("strength follows its curve, and its last slope beyond", "[solver][yield]") {
  const solver::HardeningCurve curve{{0.0, 2.0, 10.0}, {0.6, 0.9, 1.0}, 0.001};
  CHECK(curve.at(0.0).share == Approx(0.6));
  CHECK(curve.at(0.0).slope == Approx(0.15));
  CHECK(curve.at(6.0).share == Approx(0.95));
  CHECK(curve.at(6.0).slope == Approx(0.0125));
  CHECK(curve.at(110.0).share == Approx(1.1));
  CHECK(curve.at(110.0).slope == Approx(0.001));
}
