// Load lines, rollers that share places, and forces on the bone's surface, on the plated tube.
#include "models/assembly/load_setup.h"
#include "models/preparation/prepare_bodies.h"
#include "tests/framework/numbers.h"
#include "tests/models/assembly/loaded_tube.h"
#include "tests/models/assembly/monolithic_difference.h"

#include <Eigen/Geometry>
#include <catch2/catch.hpp>

#include <cmath>
#include <vector>

namespace gapstrain {

using namespace models;            // NOLINT: this file is nothing but loads
using namespace gapstrain::tests;  // NOLINT

TEST_CASE("a load line through two points is the one given by offsets", "[models][loads]") {
  LoadCase offsets = with_parts(ball_joints());
  offsets.ball_distance = 6.0 * mm;
  offsets.ball_offset_y = -3.0 * mm;
  offsets.ball_offset_z = 7.5 * mm;
  LoadCase points = with_parts(ball_joints());
  points.line = LoadLine{{-6.0 * mm, -3.0 * mm, 7.5 * mm}, {166.0 * mm, -3.0 * mm, 7.5 * mm}};
  LoadCase other = points;
  other.line->to.z = 7.6 * mm;
  const auto solved = solve_with_places({offsets, points, other});
  CHECK(difference_of(solved, 0, solved, 1) < 1e-12);
  CHECK(difference_of(solved, 0, solved, 2) > 1e-6);
}

// Two balls pass nothing on but a force along the line between them.
TEST_CASE("the force between two balls runs along their line wherever it lies", "[models][loads]") {
  LoadCase load = load_on(ball_joints());
  load.axial_compression = 100.0 * newton;
  load.line = LoadLine{{-20.0 * mm, 12.0 * mm, 30.0 * mm}, {150.0 * mm, -40.0 * mm, 5.0 * mm}};
  const auto solved = solve_with_places({load});
  const Eigen::Vector3d from(-20.0, 12.0, 30.0), line = (Eigen::Vector3d(150.0, -40.0, 5.0) - from).normalized();
  const Vector6 expected = about_origin(from, 100.0 * line);
  const Vector6 found =
      about_origin(solved.assembly.load_ports.proximal_end.centre, reaction(solved, 0, BoneEnd::proximal));
  CHECK(difference(found, expected) < 1e-10);
  CHECK(reaction(solved, 0, BoneEnd::distal).cwiseAbs().maxCoeff() < 1e-8);
}

TEST_CASE("four-point bending on the flat and on the edge in one case gives the figures of each alone",
          "[models][loads]") {
  const auto both = solve({rollers(8.0, 22.0, false), rollers(8.0, 22.0, true)});
  CHECK(roller_places(both.assembly.construct.loads).size() == 4);
  const auto flat = solve({rollers(8.0, 22.0, false)}), edge = solve({rollers(8.0, 22.0, true)});
  CHECK(difference_of(both, 0, flat, 0) < 1e-9);
  CHECK(difference_of(both, 1, edge, 0) < 1e-9);
  CHECK(difference_of(both, 0, both, 1) > 0.1);
  // Places that are shared in part.
  const auto three = solve({rollers(8.0, 22.0, false), rollers(8.0, 20.5, true), rollers(5.0, 22.0, false)});
  CHECK(roller_places(three.assembly.construct.loads).size() == 8);
  for (std::size_t l = 0; l < 3; ++l) CHECK(three.assembly.load_ports.rollers[l][0].place.body == 1);
  CHECK(three.assembly.load_ports.rollers[0][0].place.column ==
        three.assembly.load_ports.rollers[1][0].place.column);
  CHECK(three.assembly.load_ports.rollers[0][1].place.column ==
        three.assembly.load_ports.rollers[2][1].place.column);
}

TEST_CASE("a force on the surface moves the end as one on the end moves the surface", "[models][loads]") {
  LoadCase at_surface = load_on(cantilever()), at_end = at_surface;
  at_surface.forces = {places()[1]};
  at_end.transverse_y = 5.0 * newton;
  at_end.transverse_z = -9.0 * newton;
  const auto solved = solve_with_places({at_surface, at_end});
  const auto& port = solved.assembly.load_ports.surfaces[0][0];
  const double there = Eigen::Vector3d(-8.0, 30.0, 20.0).dot(motion_at(solved, 1, port.place, 3));
  const Vector6 end = distal_motion(solved, 0);
  const double back = 5.0 * end(1) - 9.0 * end(2);
  CHECK(there == Approx(back).epsilon(1e-9));
  CHECK(std::abs(there) > 1e-3);
}

// What lies proximal of the force feels its resultant: Saint-Venant's error of the same resultant put on the end.
TEST_CASE("a force on a cantilever's surface does what its wrench on the end does", "[models][loads]") {
  LoadCase at_surface = load_on(cantilever());
  at_surface.forces = {places()[1]};
  const auto first = solve_with_places({at_surface});
  const Eigen::Vector3d place = first.assembly.load_ports.surfaces[0][0].position;
  // Nearly where it was asked for: the wall's facets lie a little inside.
  const double around = 160.0 * degree.value();
  CHECK((place - Eigen::Vector3d(142.0, 7.0 * std::sin(around), 7.0 * std::cos(around))).norm() < 0.2);

  const Eigen::Vector3d force(-8.0, 30.0, 20.0), end = first.assembly.load_ports.distal_end.centre;
  const Eigen::Vector3d moment = (place - end).cross(force);
  LoadCase at_end = load_on(cantilever());
  at_end.axial_compression = -force.x() * newton;
  at_end.transverse_y = force.y() * newton;
  at_end.transverse_z = force.z() * newton;
  at_end.torsion = moment.x() * newton_mm;
  at_end.bending_y = moment.y() * newton_mm;
  at_end.bending_z = moment.z() * newton_mm;
  const auto solved = solve_with_places({at_surface, at_end});
  CHECK(difference(reactions(solved, 0), reactions(solved, 1)) < 1e-9);
  const auto plate = static_cast<std::size_t>(0), proximal = static_cast<std::size_t>(1);
  CHECK(difference(solved.solutions[0].motions[plate], solved.solutions[1].motions[plate]) < 2e-3);
  CHECK(difference(solved.solutions[0].motions[proximal], solved.solutions[1].motions[proximal]) < 2e-3);
}

TEST_CASE("constructs under supports and forces of all kinds equal the monolithic solve", "[models][loads]") {
  std::vector<LoadCase> loads;
  for (const auto& supports :
       {EndSupports{springs_times(1.0), {EndHold::guided}}, EndSupports{{EndHold::ball}, springs_times(2.0)},
        EndSupports{{EndHold::held}, {EndHold::held}}, EndSupports{{EndHold::free}, {EndHold::held}}}) {
    loads.push_back(load_on(supports));
    loads.back().forces = places();
  }
  loads[0].line = LoadLine{{-6.0 * mm, 3.0 * mm, -2.0 * mm}, {170.0 * mm, -9.0 * mm, 8.0 * mm}};
  loads[0].axial_compression = 40.0 * newton;
  const auto difference = monolithic_difference(tube_under(loads));
  CHECK(difference.displacement < 1e-8);
  CHECK(difference.stress < 1e-8);
  CHECK(difference.link_force < 1e-8);
}

TEST_CASE("bodies depend on where forces act and on nothing else of them", "[models][loads]") {
  LoadCase load = load_on(cantilever());
  load.forces = places();
  const Construct construct = tube_under({load});
  const auto shares = [&](auto change) {
    Construct other = construct;
    change(other.loads.front());
    return have_same_bodies(construct, construct.screws, other, other.screws);
  };
  CHECK(shares([](LoadCase& l) { l.forces[0].force.x = 3.0 * newton; }));
  CHECK(shares([](LoadCase& l) { l.supports = {{EndHold::guided}, springs_times(1.0)}; }));
  CHECK(shares([](LoadCase& l) { l.line = LoadLine{{}, {160.0 * mm, 0.0 * mm, 0.0 * mm}}; }));
  CHECK_FALSE(shares([](LoadCase& l) { l.forces[1].position += 1e-6 * mm; }));
  CHECK_FALSE(shares([](LoadCase& l) { l.forces[1].around += 1e-6 * radian; }));
  CHECK_FALSE(shares([](LoadCase& l) { l.forces.pop_back(); }));
}

}  // namespace gapstrain
