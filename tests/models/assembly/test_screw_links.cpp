#include "models/assembly/screw_links.h"

#include "solver/elements/shell_material.h"

#include <Eigen/Cholesky>
#include <Eigen/Geometry>
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

TEST_CASE("a ball head passes on ways and no moment, as softly as its shaft is", "[models][build]") {
  models::ScrewModel model;
  model.head_to_thread.from = {0.4, -0.3, 9.1};
  model.head_to_thread.to = {1.1, 0.2, 4.7};
  const Eigen::MatrixXd root = Eigen::MatrixXd::Random(6, 6);
  model.head_to_thread.flexibility = root * root.transpose() + Eigen::MatrixXd::Identity(6, 6);
  model.seat = Eigen::AngleAxisd(0.3, Eigen::Vector3d(1.0, 2.0, -0.5).normalized()).toRotationMatrix();
  const Eigen::Vector3d seat_centre(0.9, 0.1, 9.4);
  const auto link = models::ball_link("S", model, {0, 0}, seat_centre, {1, 0}, false);
  REQUIRE(link.ends.size() == 2);
  const auto& thread = link.ends[0];
  const auto& seat = link.ends[1];
  CHECK(thread.body == 1);

  const Eigen::Matrix<double, 6, 1> motion = Eigen::Matrix<double, 6, 1>::Random();  // of all space, about 0
  const auto at = [&](const Eigen::Vector3d& place) -> Eigen::VectorXd {
    return solver::rigid_transfer(Eigen::Vector3d::Zero(), place) * motion;
  };
  const Eigen::VectorXd none =
      thread.transfer.transpose() * at(model.head_to_thread.to) + seat.transfer.transpose() * at(seat_centre);
  CHECK(none.norm() < 1e-12);

  const Eigen::Vector3d force(3.0, -2.0, 7.0);  // in the seat's axes
  const Eigen::VectorXd on_thread = models::forces_at_thread(model, force);
  const Eigen::Vector3d arm = model.head_to_thread.to - model.head_to_thread.from;
  CHECK((on_thread.tail<3>() + arm.cross(on_thread.head<3>())).norm() < 1e-12);
  CHECK((on_thread.head<3>() - model.seat * force).norm() < 1e-12);
  const Eigen::VectorXd stretch = model.head_to_thread.flexibility * on_thread;
  const Eigen::VectorXd at_ball =
      solver::rigid_transfer(model.head_to_thread.to, model.head_to_thread.from) * stretch;
  CHECK((link.flexibility * force - model.seat.transpose() * at_ball.head<3>()).norm() < 1e-9);
}

}  // namespace gapstrain
