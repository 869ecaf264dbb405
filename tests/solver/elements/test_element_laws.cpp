// Laws that every element must pass, whatever its theory: one suite, one line of registration per element.
//
// Size of an element is about 1 mm, so that forces and moments weigh alike in a matrix's eigenvalues.
#include "solver/elements/beam.h"
#include "solver/elements/shell_quad.h"
#include "solver/elements/shell_triangle.h"

#include <Eigen/Eigenvalues>
#include <Eigen/Geometry>

#include <catch2/catch.hpp>

#include <functional>
#include <random>
#include <string>
#include <vector>

namespace gapstrain::tests {

namespace {

// One element that can be built turned as a whole, material axes included.
struct Sample {
  std::string name;
  Eigen::MatrixX3d nodes;
  std::function<Eigen::MatrixXd(const Eigen::Matrix3d& turn)> stiffness;
};

solver::ShellMaterial bone_like() {
  return solver::orthotropic_shell(17000.0, 11500.0, 0.46, 3300.0, 3100.0, 2700.0);
}

// Flat, curved or twisted; directors exact, tilted at random; thickness even or not.
template <typename Shape>
Shape shell_shape(const Eigen::MatrixX3d& nodes, double tilt, const std::vector<double>& thickness) {
  Shape shape;
  shape.nodes = nodes;
  std::mt19937 engine(1985);
  std::uniform_real_distribution<double> random(-tilt, tilt);
  for (Eigen::Index i = 0; i < nodes.rows(); ++i) {
    shape.directors.row(i) = Eigen::RowVector3d(random(engine), random(engine), 1.0).normalized();
    shape.thickness(i) = thickness[static_cast<std::size_t>(i)];
  }
  shape.axis_1 = Eigen::Vector3d(1.0, 0.37, 0.11);
  return shape;
}

template <typename Shape>
Shape turned(const Shape& shape, const Eigen::Matrix3d& turn) {
  Shape result = shape;
  result.nodes = shape.nodes * turn.transpose();
  result.directors = shape.directors * turn.transpose();
  result.axis_1 = turn * shape.axis_1;
  return result;
}

struct Quad {
  static std::vector<Sample> samples() {
    Eigen::MatrixX3d flat(4, 3), warped(4, 3);
    flat << 0.0, 0.0, 0.0, 1.1, 0.1, 0.0, 0.9, 1.2, 0.0, -0.2, 0.8, 0.0;
    warped << 0.0, 0.0, 0.12, 1.1, 0.1, -0.09, 0.9, 1.2, 0.15, -0.2, 0.8, -0.1;
    const std::vector<double> even(4, 0.31), uneven = {0.31, 0.22, 0.40, 0.27}, thin(4, 0.001);
    return {sample("flat", flat, 0.0, even), sample("thin", flat, 0.0, thin), sample("uneven", flat, 0.0, uneven),
            sample("warped, random directors", warped, 0.3, even),
            sample("warped, random directors, uneven", warped, 0.3, uneven)};
  }
  static Sample sample(const std::string& name, const Eigen::MatrixX3d& nodes, double tilt,
                       const std::vector<double>& thickness) {
    return {name, nodes, [=](const Eigen::Matrix3d& turn) {
              const auto shape = shell_shape<solver::QuadShape>(nodes, tilt, thickness);
              return Eigen::MatrixXd(solver::quad_stiffness(turned(shape, turn), bone_like()));
            }};
  }
};

struct Triangle {
  static std::vector<Sample> samples() {
    Eigen::MatrixX3d nodes(3, 3);
    nodes << 0.0, 0.0, 0.05, 1.1, 0.1, -0.09, 0.4, 0.9, 0.15;
    const std::vector<double> even(3, 0.31), uneven = {0.31, 0.22, 0.40}, thin(3, 0.001);
    return {sample("flat", nodes, 0.0, even), sample("thin", nodes, 0.0, thin),
            sample("random directors", nodes, 0.3, even), sample("random directors, uneven", nodes, 0.3, uneven)};
  }
  static Sample sample(const std::string& name, const Eigen::MatrixX3d& nodes, double tilt,
                       const std::vector<double>& thickness) {
    return {name, nodes, [=](const Eigen::Matrix3d& turn) {
              const auto shape = shell_shape<solver::TriangleShape>(nodes, tilt, thickness);
              return Eigen::MatrixXd(solver::triangle_stiffness(turned(shape, turn), bone_like()));
            }};
  }
};

struct Beam {
  static std::vector<Sample> samples() {
    Eigen::MatrixX3d slender(2, 3), stubby(2, 3);
    slender << 0.2, 0.1, -0.3, 0.7, -0.5, 0.4;
    stubby << 0.0, 0.0, 0.0, 0.0, 0.0, 0.11;
    return {sample("slender, oblique", slender), sample("shorter than thick", stubby)};
  }
  static Sample sample(const std::string& name, const Eigen::MatrixX3d& nodes) {
    return {name, nodes, [=](const Eigen::Matrix3d& turn) {
              return Eigen::MatrixXd(solver::beam_stiffness(solver::solid_circle(0.19, 186000.0, 0.3),
                                                            turn * nodes.row(0).transpose(),
                                                            turn * nodes.row(1).transpose()));
            }};
  }
};

// Six rigid motions of the nodes, one a column: three shifts, three turns about the origin.
Eigen::MatrixXd rigid_motions(const Eigen::MatrixX3d& nodes) {
  Eigen::MatrixXd motions = Eigen::MatrixXd::Zero(6 * nodes.rows(), 6);
  for (Eigen::Index i = 0; i < nodes.rows(); ++i) {
    motions.block<6, 6>(6 * i, 0).setIdentity();
    for (int axis = 0; axis < 3; ++axis)
      motions.block<3, 1>(6 * i, 3 + axis) = Eigen::Vector3d::Unit(axis).cross(nodes.row(i).transpose());
  }
  return motions;
}

Eigen::MatrixXd turn_of_unknowns(const Eigen::Matrix3d& turn, Eigen::Index nodes) {
  Eigen::MatrixXd result = Eigen::MatrixXd::Zero(6 * nodes, 6 * nodes);
  for (Eigen::Index block = 0; block < 2 * nodes; ++block) result.block<3, 3>(3 * block, 3 * block) = turn;
  return result;
}

}  // namespace

TEMPLATE_TEST_CASE("an element's stiffness is symmetric", "[elements][laws]", Quad, Triangle, Beam) {
  for (const auto& sample : TestType::samples()) {
    CAPTURE(sample.name);
    const Eigen::MatrixXd stiffness = sample.stiffness(Eigen::Matrix3d::Identity());
    CHECK((stiffness - stiffness.transpose()).cwiseAbs().maxCoeff() < 1e-14 * stiffness.cwiseAbs().maxCoeff());
  }
}

TEMPLATE_TEST_CASE("an element resists everything but its six rigid motions", "[elements][laws]", Quad, Triangle,
                   Beam) {
  for (const auto& sample : TestType::samples()) {
    CAPTURE(sample.name);
    const Eigen::MatrixXd stiffness = sample.stiffness(Eigen::Matrix3d::Identity());
    const Eigen::VectorXd values = Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd>(stiffness).eigenvalues();
    const double largest = values.tail<1>()(0);
    CHECK(values.head<6>().cwiseAbs().maxCoeff() < 1e-13 * largest);
    CHECK(values(6) > 1e-10 * largest);
  }
}

TEMPLATE_TEST_CASE("a rigid motion of an element gives no force", "[elements][laws]", Quad, Triangle, Beam) {
  for (const auto& sample : TestType::samples()) {
    CAPTURE(sample.name);
    const Eigen::MatrixXd stiffness = sample.stiffness(Eigen::Matrix3d::Identity());
    CHECK((stiffness * rigid_motions(sample.nodes)).cwiseAbs().maxCoeff() <
          1e-13 * stiffness.cwiseAbs().maxCoeff());
  }
}

TEMPLATE_TEST_CASE("turning an element as a whole turns its stiffness and keeps its energy", "[elements][laws]",
                   Quad, Triangle, Beam) {
  const Eigen::Matrix3d turn =
      Eigen::AngleAxisd(1.234, Eigen::Vector3d(0.3, -0.7, 0.5).normalized()).toRotationMatrix();
  for (const auto& sample : TestType::samples()) {
    CAPTURE(sample.name);
    const Eigen::MatrixXd straight = sample.stiffness(Eigen::Matrix3d::Identity());
    const Eigen::MatrixXd oblique = sample.stiffness(turn);
    const Eigen::MatrixXd change = turn_of_unknowns(turn, sample.nodes.rows());
    CHECK((change.transpose() * oblique * change - straight).cwiseAbs().maxCoeff() <
          1e-13 * straight.cwiseAbs().maxCoeff());
    const Eigen::VectorXd motion = Eigen::VectorXd::LinSpaced(straight.rows(), -1.0, 2.3).array().sin();
    const Eigen::VectorXd turned_motion = change * motion;
    CHECK(turned_motion.dot(oblique * turned_motion) == Approx(motion.dot(straight * motion)).epsilon(1e-12));
  }
}

TEST_CASE("a folded shell element is refused", "[elements]") {
  Eigen::MatrixX3d nodes(4, 3);
  nodes << 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 1.0, 1.0, 0.0, 0.0, 1.0, 0.0;
  auto shape = shell_shape<solver::QuadShape>(nodes, 0.0, std::vector<double>(4, 0.3));
  shape.directors = -shape.directors;
  CHECK_THROWS_AS(solver::quad_stiffness(shape, bone_like()), std::invalid_argument);
  auto triangle = shell_shape<solver::TriangleShape>(nodes.topRows<3>(), 0.0, std::vector<double>(3, 0.3));
  triangle.directors = -triangle.directors;
  CHECK_THROWS_AS(solver::triangle_stiffness(triangle, bone_like()), std::invalid_argument);
}

TEST_CASE("elastic constants without a positive energy are refused", "[elements]") {
  // E2/E1 nu12^2 = 1.05 > 1: the plane-stress law would be indefinite.
  CHECK_THROWS_AS(solver::orthotropic_shell(10000.0, 17000.0, 0.786, 3300.0, 3100.0, 2700.0),
                  std::invalid_argument);
  CHECK_THROWS_AS(solver::orthotropic_shell(17000.0, 11500.0, 0.46, 3300.0, 0.0, 2700.0), std::invalid_argument);
  CHECK_THROWS_AS(solver::isotropic_shell(-1.0, 0.3), std::invalid_argument);
}

// A material axis that stands on the wall leaves the direction open; an isotropic wall does not care which is
// taken.
TEST_CASE("a material axis along the wall's normal is replaced by one in the wall", "[elements]") {
  Eigen::MatrixX3d nodes(4, 3);
  nodes << 0.0, 0.0, 0.0, 1.1, 0.1, 0.0, 0.9, 1.2, 0.0, -0.2, 0.8, 0.0;
  const auto material = solver::isotropic_shell(17000.0, 0.3);
  auto quad = shell_shape<solver::QuadShape>(nodes, 0.0, std::vector<double>(4, 0.3));
  const auto usual = solver::quad_stiffness(quad, material);
  quad.axis_1 = Eigen::Vector3d::UnitZ();
  CHECK((solver::quad_stiffness(quad, material) - usual).cwiseAbs().maxCoeff() < 1e-12 * usual.maxCoeff());
  auto triangle = shell_shape<solver::TriangleShape>(nodes.topRows<3>(), 0.0, std::vector<double>(3, 0.3));
  const auto usual_3 = solver::triangle_stiffness(triangle, material);
  triangle.axis_1 = Eigen::Vector3d::UnitZ();
  CHECK((solver::triangle_stiffness(triangle, material) - usual_3).cwiseAbs().maxCoeff() <
        1e-12 * usual_3.maxCoeff());
}

}  // namespace gapstrain::tests
