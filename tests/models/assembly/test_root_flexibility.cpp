#include "models/assembly/root_flexibility.h"

#include <Eigen/Geometry>

#include <catch2/catch.hpp>

namespace gapstrain {

TEST_CASE("the root's fractions are the unit cell's at its own points", "[models][build]") {
  const auto thin = models::wall_root(1.5, 6.5);
  CHECK(thin.tilt == Approx(.62));
  CHECK(thin.twist == Approx(.41));
  CHECK(thin.shift == Approx(.22));
  CHECK(thin.stretch == Approx(.70));
  const auto thick = models::wall_root(3.0, 20.0);
  CHECK(thick.tilt == Approx(1.01));
  CHECK(thick.twist == Approx(.78));
}

TEST_CASE("a rim of 1.25 shaft radii of the same metal has the unit cell's own fractions", "[models][build]") {
  const auto root = models::rim_root(2.1, 1.0, 1.25);
  CHECK(root.tilt == Approx(0.48));
  CHECK(root.twist == Approx(0.28));
  CHECK(root.shift == Approx(0.30));
  CHECK(root.stretch == Approx(1.46));
}

TEST_CASE("the root tends to the half-space as the wall becomes one", "[models][build]") {
  // Half-space of the shaft's own material: tilt 0.50, twist 0.32 of a radius (own unit cell). A wall of three
  // radii is not yet one; it must lie within 20 % of it.
  const auto root = models::wall_root(3.0, 1.0);
  CHECK(root.tilt == Approx(0.50).epsilon(0.2));
  CHECK(root.twist == Approx(0.32).epsilon(0.2));
}

TEST_CASE("a root turns with its screw", "[models][build]") {
  const auto section = solver::solid_circle(2.4, 110000.0, 0.3);
  const auto fractions = models::wall_root(2.1, 6.5);
  const Eigen::Matrix3d turn =
      Eigen::AngleAxisd(0.3, Eigen::Vector3d(1.0, 2.0, -1.0).normalized()).toRotationMatrix();
  const Eigen::Vector3d axis = -Eigen::Vector3d::UnitZ();
  solver::Matrix6 both = solver::Matrix6::Zero();
  both.topLeftCorner<3, 3>() = turn;
  both.bottomRightCorner<3, 3>() = turn;
  const auto straight = models::root_flexibility(fractions, section, 1.2, axis);
  const auto turned = models::root_flexibility(fractions, section, 1.2, turn * axis);
  CHECK((turned - both * straight * both.transpose()).norm() < 1e-12 * straight.norm());
  // About the axis: c a / GJ; across it: c a / EI.
  CHECK(straight(5, 5) == Approx(fractions.twist * 1.2 / section.torsion));
  CHECK(straight(3, 3) == Approx(fractions.tilt * 1.2 / section.bending));
}

}  // namespace gapstrain
