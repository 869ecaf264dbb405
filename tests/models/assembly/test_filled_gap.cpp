// Tissue in a wide gap: statics of its links, and a bone whose gap is filled with its own material against the
// uncut one of beam theory.
#include "models/measures/solve.h"
#include "models/preparation/prepare_bodies.h"
#include "tests/framework/numbers.h"
#include "tests/models/constructs.h"

#include <Eigen/Geometry>

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>
#include <vector>

namespace gapstrain {

using namespace models;  // NOLINT: this file is nothing but one construct

namespace {

using Vector6 = Eigen::Matrix<double, 6, 1>;

constexpr double outer_radius = 7.0, inner_radius = 4.5, length = 160.0, gap_width = 3.0, modulus = 17000.0;

// Of a material that does not contract sideways: the column of tissue, held sideways, is no stiffer than the bone.
Construct filled_tube(double tissue_modulus, double obliquity = 0.0) {
  Construct construct = tests::plated_tube();
  construct.mesh.refinement = 0.7;
  construct.bone.cortex = isotropic_cortex("tube", modulus * mpa, 0.0, "made up for tests");
  Fracture& fracture = only(construct.fractures);
  fracture.obliquity = obliquity * degree;
  fracture.direction = 0.7 * radian;
  fracture.tissue = Tissue{"filling", tissue_modulus * mpa, 0.0, "made up for tests"};
  return construct;
}

LoadCase moments(double offset_y, double offset_z, double beyond) {
  LoadCase load;
  load.ball_offset_y = offset_y * mm;
  load.ball_offset_z = offset_z * mm;
  load.ball_distance = beyond * mm;
  load.bending_y = 900.0 * newton_mm;
  load.bending_z = -700.0 * newton_mm;
  load.torsion = 1000.0 * newton_mm;
  return load;
}

// Bone and filling alone: the plate hangs on one screw in one cortex.
Construct without_plate(Construct construct) {
  construct.screws.resize(1);
  construct.screws[0].cortices = 1;
  return construct;
}

ConstructState carried_out(const Assembly& assembly) {
  const auto& construct = assembly.construct;
  return carry_out(assembly, procedure_of(construct, chosen_screws(assembly, construct.screws))).back();
}

double difference_of_forces(const solver::Solution& one, const solver::Solution& other) {
  REQUIRE(one.links == other.links);
  double difference = 0.0, largest = 0.0;
  for (std::size_t l = 0; l < one.links.size(); ++l) {
    largest = std::max(largest, other.link_forces[l].cwiseAbs().maxCoeff());
    difference = std::max(difference, (one.link_forces[l] - other.link_forces[l]).cwiseAbs().maxCoeff());
  }
  return difference / largest;
}

}  // namespace

TEST_CASE("links across a gap are in equilibrium and free of rigid motions", "[models][build]") {
  for (const double obliquity : {0.0, 25.0}) {
    CAPTURE(obliquity);
    Construct construct = filled_tube(100.0, obliquity);
    // Walls that taper: faces are not each other's image moved along the bone.
    construct.bone.stations = {{20.0 * mm, 16.0 * mm, 14.0 * mm, 3.0 * mm, 0.0 * mm, 0.0 * mm},
                               {80.0 * mm, 14.0 * mm, 13.0 * mm, 2.5 * mm, 0.0 * mm, 1.0 * mm},
                               {140.0 * mm, 11.0 * mm, 12.0 * mm, 2.0 * mm, 0.0 * mm, 0.0 * mm}};
    const auto bodies = prepare_bodies(construct, construct.screws);
    const Assembly assembly = assemble(bodies, construct, construct.screws);
    const auto centre_of = [&](std::size_t body, Eigen::Index column) -> Eigen::Vector3d {
      const auto& ports = bodies->ports.ports(body).columns();
      return std::find_if(ports.begin(), ports.end(), [&](const auto& port) { return port.column == column; })
          ->centre;
    };
    // A rigid motion of everything, by what its six rows do to a link: forces and moments about the origin that
    // the link's unit forces leave.
    const auto left_by = [&](int index) {
      const solver::Link& link = assembly.system->links()[static_cast<std::size_t>(index)];
      Eigen::MatrixXd left = Eigen::MatrixXd::Zero(6, link.size());
      for (const auto& end : link.ends) {
        REQUIRE(end.transfer.rows() == 3);
        left.topRows<3>() += end.transfer;
        for (Eigen::Index k = 0; k < link.size(); ++k)
          left.block<3, 1>(3, k) += centre_of(end.body, end.column).cross(Eigen::Vector3d(end.transfer.col(k)));
      }
      return left.cwiseAbs().maxCoeff();
    };
    double worst = 0.0;
    for (std::size_t k = 0; k < assembly.face.size(); ++k)
      for (const int link : {assembly.tissues[0].links[k], assembly.pairs[k].normal, assembly.pairs[k].tangent})
        worst = std::max(worst, left_by(link));
    CHECK(worst < 1e-10);  // N mm a N
  }
}

TEST_CASE("moments on a filled gap do not depend on where the balls sit", "[models][build]") {
  for (const double obliquity : {0.0, 25.0}) {
    CAPTURE(obliquity);
    Construct construct = filled_tube(modulus, obliquity);
    construct.loads = {moments(0.0, 0.0, 0.0), moments(4.0, -9.0, 0.0), moments(-15.0, 20.0, 30.0)};
    const Assembly assembly = assemble(construct, construct.screws);
    const auto made = carried_out(assembly);
    std::vector<solver::Solution> answers;
    for (const auto& load : assembly.loads) answers.push_back(solve_small_load(assembly, made, load));
    for (auto& answer : answers) {  // not those of the balls, of which each load has its own
      const auto is_support = [&](int link) {
        return std::any_of(assembly.loads.begin(), assembly.loads.end(), [&](const AssembledLoad& load) {
          return std::find(load.supports.begin(), load.supports.end(), link) != load.supports.end();
        });
      };
      std::vector<int> links;
      std::vector<Eigen::MatrixXd> forces;
      for (std::size_t l = 0; l < answer.links.size(); ++l)
        if (!is_support(answer.links[l])) {
          links.push_back(answer.links[l]);
          forces.push_back(answer.link_forces[l]);
        }
      answer.links = links;
      answer.link_forces = forces;
    }
    for (const std::size_t k : {1U, 2U}) CHECK(difference_of_forces(answers[k], answers[0]) < 1e-8);
  }
}

TEST_CASE("a gap filled with the bone's own material is the uncut bone of beam theory", "[models][build]") {
  Construct construct = without_plate(filled_tube(modulus));
  LoadCase free;
  free.supports = cantilever();
  construct.loads.assign(4, free);
  construct.loads[0].torsion = 1000.0 * newton_mm;
  construct.loads[1].bending_y = 1000.0 * newton_mm;
  construct.loads[2].bending_z = 1000.0 * newton_mm;
  construct.loads[3].transverse_z = 10.0 * newton;
  const Assembly assembly = assemble(construct, construct.screws);
  const auto made = carried_out(assembly);
  const auto& end = assembly.load_ports.distal_end.place;
  const auto motion = [&](std::size_t load) -> Vector6 {
    return solve_small_load(assembly, made, assembly.loads[load]).motions[end.body].block<6, 1>(end.column, 0);
  };
  const double inertia = std::numbers::pi / 4.0 * (std::pow(outer_radius, 4.0) - std::pow(inner_radius, 4.0));
  const double bending = length / (modulus * inertia), torsion = length / (0.5 * modulus * 2.0 * inertia);
  const double twist = motion(0)(3) / (1000.0 * torsion), about_y = std::abs(motion(1)(4)) / (1000.0 * bending),
               about_z = std::abs(motion(2)(5)) / (1000.0 * bending);
  // Of a force across: sag, and the head's turn.
  const Vector6 across = motion(3);
  const double turn = across(4) / (-10.0 * length * bending / 2.0);
  CAPTURE(twist, about_y, about_z, turn, across(2) / (10.0 * length * length * bending / 3.0));
  CHECK(twist == Approx(1.0).epsilon(0.01));
  CHECK(about_y == Approx(1.0).epsilon(0.01));
  CHECK(about_z == Approx(1.0).epsilon(0.01));
  CHECK(turn == Approx(1.0).epsilon(0.01));
}

}  // namespace gapstrain
