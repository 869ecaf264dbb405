// The beam against the closed-form cantilever of Timoshenko's theory, in any direction: axial F L/EA, sway
// F L^3/3EI + F L/(G A_s), slope F L^2/2EI, end moment M L^2/2EI and M L/EI, twist T L/GJ. Textbook formulas.
#include "solver/elements/beam.h"

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <catch2/catch.hpp>

#include <cmath>

namespace gapstrain::tests {

namespace {

const solver::BeamSection section{.axial = 841000.0, .bending = 302000.0, .torsion = 233000.0, .shear = 286000.0};

using Motion6 = Eigen::Matrix<double, 6, 1>;

Motion6 blockwise(const Eigen::Matrix3d& turn, const Eigen::Vector3d& first, const Eigen::Vector3d& second) {
  Motion6 result;
  result.head<3>() = turn * first;
  result.tail<3>() = turn * second;
  return result;
}

// An axis frame: x along the cantilever.
Eigen::Matrix3d frame(const Eigen::Vector3d& axis) {
  Eigen::Matrix3d columns;
  columns.col(0) = axis.normalized();
  columns.col(1) = axis.unitOrthogonal();
  columns.col(2) = columns.col(0).cross(columns.col(1));
  return columns;
}

// Tip motion of the cantilever under a tip force and moment, all in the axis frame.
Motion6 closed_form(double length, const Eigen::Vector3d& force, const Eigen::Vector3d& moment) {
  const double sway = std::pow(length, 3) / (3.0 * section.bending) + length / section.shear;
  const double slope = length * length / (2.0 * section.bending), turn = length / section.bending;
  Motion6 motion;
  motion << force.x() * length / section.axial, force.y() * sway + moment.z() * slope,
      force.z() * sway - moment.y() * slope, moment.x() * length / section.torsion,
      moment.y() * turn - force.z() * slope, moment.z() * turn + force.y() * slope;
  return motion;
}

}  // namespace

TEST_CASE("a beam held at one end moves as the closed-form cantilever, in any direction", "[elements][beam]") {
  const Eigen::Vector3d axis = GENERATE(values<Eigen::Vector3d>(
      {{1.0, 0.0, 0.0}, {0.0, -1.0, 0.0}, {0.0, 0.0, 1.0}, {0.3, -0.8, 0.52}, {-0.2, 0.1, -0.9}}));
  const double length = 7.3;
  const Eigen::Matrix3d axes = frame(axis);
  const Eigen::Vector3d end_1(1.2, -3.4, 0.7), end_2 = end_1 + length * axes.col(0);
  const Eigen::Vector3d force(31.0, -17.0, 23.0), moment(41.0, 13.0, -29.0);
  const Motion6 load = blockwise(axes, force, moment);

  const auto check = [&](const Motion6& motion) {
    const Motion6 local = blockwise(axes.transpose(), motion.head<3>(), motion.tail<3>());
    const auto expected = closed_form(length, force, moment);
    CHECK((local - expected).cwiseAbs().maxCoeff() < 1e-12 * expected.cwiseAbs().maxCoeff());
  };
  check(solver::beam_flexibility(section, end_1, end_2) * load);

  const solver::Matrix12 stiffness = solver::beam_stiffness(section, end_1, end_2);
  const solver::Matrix6 tip = stiffness.bottomRightCorner<6, 6>();
  const Motion6 motion = tip.fullPivLu().solve(load);
  check(motion);

  // Forces at the held end balance the tip's.
  const Motion6 root = stiffness.topRightCorner<6, 6>() * motion;
  CHECK((root.head<3>() + load.head<3>()).norm() < 1e-11 * load.norm());
  CHECK((root.tail<3>() + load.tail<3>() + (end_2 - end_1).cross(Eigen::Vector3d(load.head<3>()))).norm() <
        1e-11 * load.norm() * length);
}

TEST_CASE("a rigid transfer carries a turn into the sway of a distant point", "[elements][beam]") {
  const Eigen::Vector3d from(0.4, -1.1, 2.3), to(3.0, 0.7, -0.9), shift(0.3, 0.1, -0.2), turn(0.7, -0.4, 0.9);
  const Motion6 motion = blockwise(Eigen::Matrix3d::Identity(), shift, turn);
  const Motion6 moved = solver::rigid_transfer(from, to) * motion;
  CHECK((moved.head<3>() - shift - turn.cross(to - from)).norm() < 1e-15);
  CHECK((moved.tail<3>() - turn).norm() == 0.0);
}

// Half of a beam after the other is the whole beam: flexibilities add when carried to the same point.
TEST_CASE("two halves of a beam in series are the whole beam", "[elements][beam]") {
  const Eigen::Vector3d a(0.2, -0.1, 0.4), b(2.9, 1.7, -3.2), middle = 0.37 * a + 0.63 * b;
  const solver::Matrix6 carry = solver::rigid_transfer(middle, b);
  const solver::Matrix6 series = carry * solver::beam_flexibility(section, a, middle) * carry.transpose() +
                                 solver::beam_flexibility(section, middle, b);
  const solver::Matrix6 whole = solver::beam_flexibility(section, a, b);
  CHECK((series - whole).cwiseAbs().maxCoeff() < 1e-13 * whole.cwiseAbs().maxCoeff());
}

// Cowper 1966, J Appl Mech 33:335, table: a solid circle has shear factor 0.886 at nu = 0.3 (figure from memory).
TEST_CASE("a solid circle has the section of a shaft", "[elements][beam]") {
  const auto shaft = solver::solid_circle(2.4, 186000.0, 0.3);
  CHECK(shaft.axial == Approx(186000.0 * 4.52389).epsilon(1e-5));
  CHECK(shaft.bending == Approx(186000.0 * 1.628602).epsilon(1e-5));
  CHECK(shaft.torsion == Approx(71538.46 * 3.257203).epsilon(1e-5));
  CHECK(shaft.shear == Approx(0.886 * 71538.46 * 4.52389).epsilon(1e-3));
}

TEST_CASE("a beam without length is rigid and has no stiffness matrix", "[elements][beam]") {
  const Eigen::Vector3d point(1.0, 2.0, 3.0);
  CHECK(solver::beam_flexibility(section, point, point).norm() == 0.0);
  CHECK_THROWS_AS(solver::beam_stiffness(section, point, point), std::invalid_argument);
}

}  // namespace gapstrain::tests
