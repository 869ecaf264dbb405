#include "models/geometry/ellipse.h"

#include <boost/math/special_functions/ellint_2.hpp>
#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using gapstrain::models::Ellipse;

TEST_CASE("the nearest point of an ellipse is nearer than any other", "[models][parts]") {
  for (const Ellipse ellipse : {Ellipse{7.3, 4.1}, Ellipse{3.9, 6.6}, Ellipse{5.0, 5.0}, Ellipse{9.0, 1.1}})
    for (double y = -11.0; y <= 11.0; y += 1.37)
      for (double z = -9.0; z <= 9.0; z += 1.13) {
        const Eigen::Vector2d from(y, z);
        const double found = (ellipse.point(ellipse.nearest_parameter(from)) - from).norm();
        double least = 1e9;
        for (int i = 0; i < 2000; ++i)
          least = std::min(least, (ellipse.point(1e-3 * std::numbers::pi * i) - from).norm());
        CAPTURE(ellipse.semi_y, ellipse.semi_z, y, z);
        REQUIRE(found <= least + 1e-12);
        REQUIRE(std::abs(ellipse.depth(from)) == Approx(found));
      }
}

TEST_CASE("a point moved off an ellipse along its normal has that depth and foot", "[models][parts]") {
  for (const Ellipse ellipse : {Ellipse{7.3, 4.1}, Ellipse{3.9, 6.6}, Ellipse{5.0, 5.0}})
    for (const double parameter : {0.0, 0.3, 1.1, 0.5 * std::numbers::pi, 2.4, -0.7, -1.9, -3.0})
      for (const double depth : {-4.0, -1e-7, 1e-7, 0.6, 1.9}) {
        const Eigen::Vector2d from = ellipse.point(parameter) - depth * ellipse.normal(parameter);
        CAPTURE(ellipse.semi_y, ellipse.semi_z, parameter, depth);
        REQUIRE(ellipse.depth(from) == Approx(depth).margin(1e-12));
        REQUIRE(ellipse.nearest_parameter(from) == Approx(parameter).margin(1e-7));
      }
}

TEST_CASE("points on the axes of an ellipse inside its evolute are handled", "[models][parts]") {
  const Ellipse ellipse{7.0, 4.0};
  CHECK(ellipse.depth({0.0, 0.0}) == Approx(4.0));
  CHECK(ellipse.depth({6.9, 0.0}) == Approx(0.1));
  // Closed form on the long axis inside the evolute: minor sqrt(1 - y^2/(major^2 - minor^2)).
  CHECK(ellipse.depth({2.0, 0.0}) == Approx(4.0 * std::sqrt(1.0 - 4.0 / 33.0)));
  CHECK(ellipse.depth({0.0, -3.0}) == Approx(1.0));
  CHECK(ellipse.depth({0.0, 5.5}) == Approx(-1.5));
  CHECK(std::isfinite(ellipse.depth({1e-300, 1e-300})));
}

TEST_CASE("speed and curvature of an ellipse sum to its perimeter and to a full turn", "[models][parts]") {
  const Ellipse ellipse{4.3, 6.9};
  double perimeter = 0.0, turn = 0.0;
  constexpr int steps = 400;  // the trapezium rule is exponentially exact for a period
  for (int i = 0; i < steps; ++i) {
    const double parameter = 2.0 * std::numbers::pi * i / steps;
    perimeter += ellipse.speed(parameter) * 2.0 * std::numbers::pi / steps;
    turn += ellipse.curvature(parameter) * ellipse.speed(parameter) * 2.0 * std::numbers::pi / steps;
  }
  const double eccentricity = std::sqrt(1.0 - 4.3 * 4.3 / (6.9 * 6.9));
  CHECK(perimeter == Approx(4.0 * 6.9 * boost::math::ellint_2(eccentricity)).epsilon(1e-12));
  CHECK(turn == Approx(2.0 * std::numbers::pi).epsilon(1e-12));
  CHECK(ellipse.smallest_radius_of_curvature() == Approx(1.0 / ellipse.curvature(0.0)));
}
