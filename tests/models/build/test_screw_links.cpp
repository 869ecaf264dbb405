#include "models/build/screw_links.h"

#include "solver/elements/shell_material.h"

#include <Eigen/Cholesky>
#include <Eigen/LU>

#include <catch2/catch.hpp>

#include <numbers>

namespace gapstrain {

namespace {

constexpr double rim = 1.6, thickness = 2.3, youngs_modulus = 113000.0, nu = 0.34;

Eigen::Matrix<double, 6, 6> plug_stiffness(double shaft_radius) {
  return models::plug_flexibility(rim, thickness, shaft_radius, youngs_modulus, nu).inverse();
}

}  // namespace

TEST_CASE("a head without a shaft is a plain disk", "[models][build]") {
  const Eigen::Matrix3d law = solver::isotropic_shell(youngs_modulus, nu).plane_stress;
  const double area = std::numbers::pi * rim * rim;
  const auto stiffness = plug_stiffness(1e-9);
  CHECK(stiffness(0, 0) == Approx(area * thickness * law(0, 0)));
  CHECK(stiffness(0, 1) == Approx(area * thickness * law(0, 1)));
  CHECK(stiffness(3, 3) == Approx(area * thickness * thickness * thickness / 12.0 * law(0, 0)));
  // kappa_12 = w,12 is half the twist: its force is 4 law_33.
  CHECK(stiffness(5, 5) == Approx(area * thickness * thickness * thickness / 3.0 * law(2, 2)));
}

TEST_CASE("a shaft's foot only stiffens its head, on its own side", "[models][build]") {
  const auto bare = plug_stiffness(1e-9), footed = plug_stiffness(1.2);
  const Eigen::LDLT<Eigen::MatrixXd> added(Eigen::MatrixXd(footed - bare));
  CHECK(added.vectorD().minCoeff() > -1e-6 * bare(3, 3));
  // Stretch of the underside is what the foot resists: curving the top hollow together with stretching costs most.
  CHECK(footed(0, 3) > 0.0);
  CHECK(bare(0, 3) == Approx(0.0).margin(1e-6 * bare(0, 0)));
}

// Bending flexibility of a footed disk over the bare one's, own three-dimensional unit cell: 0.885 for curvatures
// alike in both directions, 0.824 for opposite ones, with the rim's strain left free. Disk 3.0 by 2.5 mm, core 2.4
// mm, nu 0.3.
TEST_CASE("a footed head bends like its three-dimensional unit cell", "[models][build]") {
  const auto footed = models::plug_flexibility(1.5, 2.5, 1.2, 110000.0, 0.3);
  const auto bare = models::plug_flexibility(1.5, 2.5, 1e-9, 110000.0, 0.3);
  const auto flexibility = [](const Eigen::Matrix<double, 6, 6>& plug, double sign) {
    Eigen::Matrix<double, 6, 1> moment;
    moment << 0.0, 0.0, 0.0, 1.0, sign, 0.0;
    return moment.dot(plug * moment);
  };
  CHECK(flexibility(footed, 1.0) / flexibility(bare, 1.0) == Approx(0.885).epsilon(0.02));
  CHECK(flexibility(footed, -1.0) / flexibility(bare, -1.0) == Approx(0.824).epsilon(0.02));
}

}  // namespace gapstrain
