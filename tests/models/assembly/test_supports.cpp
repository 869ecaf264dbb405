// Supports end by end on the plated tube: statics, and the rigid motion of what is held determinately, are known
// exactly.
#include "models/assembly/load_setup.h"
#include "models/findings/model_error.h"
#include "models/parts/words.h"
#include "solver/elements/beam.h"
#include "tests/framework/numbers.h"
#include "tests/models/assembly/loaded_tube.h"

#include <Eigen/Geometry>
#include <catch2/catch.hpp>

#include <string>
#include <utility>
#include <vector>

namespace gapstrain {

using namespace models;            // NOLINT: this file is nothing but loads
using namespace gapstrain::tests;  // NOLINT

TEST_CASE("springs without end hold an end, springs of nothing let it go", "[models][loads]") {
  const auto solved = solve_with_places(
      {with_parts({springs_times(1e6), {EndHold::free}}), with_parts({springs_times(1e7), {EndHold::free}}),
       with_parts({{EndHold::held}, {EndHold::free}}), with_parts({{EndHold::held}, springs_times(1e-6)}),
       with_parts({{EndHold::held}, springs_times(1e-7)})});
  const double stiff = difference_of(solved, 0, solved, 2), stiffer = difference_of(solved, 1, solved, 2);
  CHECK(stiff < 1e-4);
  CHECK(stiffer == Approx(0.1 * stiff).epsilon(0.01));  // in proportion to the flexibility
  const double soft = difference_of(solved, 3, solved, 2), softer = difference_of(solved, 4, solved, 2);
  CHECK(soft < 1e-3);
  CHECK(softer == Approx(0.1 * soft).epsilon(0.01));
}

TEST_CASE("an elastic end adds the motion of its springs under the load, exactly", "[models][loads]") {
  LoadCase load = with_parts(cantilever());
  load.transverse_y = 7.0 * newton;
  load.transverse_z = -11.0 * newton;
  LoadCase sprung = load, coupled = load;
  sprung.supports.proximal = springs_times(1.0);
  coupled.supports.proximal = springs_times(1.0);
  auto& rows = coupled.supports.proximal.flexibility.rows;
  rows[6 * 1 + 5] = rows[6 * 5 + 1] = 2e-4;  // uy with the turn about z
  rows[6 * 0 + 3] = rows[6 * 3 + 0] = -1e-4;
  const auto solved = solve_with_places({load, sprung, coupled});
  const LoadPorts& ports = solved.assembly.load_ports;
  // On the bone about the proximal end: what the springs pass on.
  const auto set_up = set_up_loads({load}, {ports.proximal_end, ports.distal_end, {}, {{}}}).front().forces;
  REQUIRE(set_up.size() == 1);
  const solver::Matrix6 to_end = solver::rigid_transfer(ports.proximal_end.centre, ports.distal_end.centre);
  const Vector6 wrench = to_end.transpose() * set_up.front().force;
  for (const std::size_t l : {1U, 2U}) {
    const auto& flexibility = solved.assembly.construct.loads[l].supports.proximal.flexibility;
    const Vector6 added = to_end * Eigen::Map<const solver::Matrix6>(flexibility.rows.data()) * wrench;
    const Vector6 found = distal_motion(solved, l) - distal_motion(solved, 0);
    CHECK(difference(found, added) < 1e-9);
    CHECK(difference(found, distal_motion(solved, 0)) > 0.1);
  }
  // The axial part by hand: F over k.
  LoadCase axial = load_on(cantilever()), on_spring = axial;
  axial.axial_compression = on_spring.axial_compression = 100.0 * newton;
  EndSprings one;
  one.translation[0] = 250.0 * (newton / mm);
  on_spring.supports.proximal = {EndHold::elastic, flexibility_of(one)};
  const auto pressed = solve_with_places({axial, on_spring});
  CHECK(distal_motion(pressed, 1)(0) - distal_motion(pressed, 0)(0) == Approx(-100.0 / 250.0).epsilon(1e-9));
}

TEST_CASE("supports of all kinds are in balance with what acts", "[models][loads]") {
  const std::vector<EndHold> kinds{EndHold::ball, EndHold::held, EndHold::guided, EndHold::elastic};
  std::vector<LoadCase> loads;
  for (const EndHold proximal : kinds)
    for (const EndHold distal : kinds) {
      if (proximal == EndHold::guided && distal == EndHold::guided) continue;  // slides
      LoadCase load = with_parts({{proximal}, {distal}});
      load.forces = places();
      load.ball_distance = 3.0 * mm;
      load.ball_offset_y = 2.0 * mm;
      load.ball_offset_z = -5.0 * mm;
      if (proximal == EndHold::elastic) load.supports.proximal = springs_times(0.7);
      if (distal == EndHold::elastic) load.supports.distal = springs_times(1.4);
      loads.push_back(load);
      load.line = LoadLine{{-6.0 * mm, 3.0 * mm, -2.0 * mm}, {170.0 * mm, -9.0 * mm, 8.0 * mm}};
      loads.push_back(load);
    }
  const auto solved = solve_with_places(loads);
  for (std::size_t l = 0; l < loads.size(); ++l) {
    CAPTURE(name_of(loads[l].supports.proximal.hold), name_of(loads[l].supports.distal.hold), l);
    const Vector6 loaded = applied(solved, l);
    CHECK(loaded.norm() > 100.0);
    CHECK((loaded + reactions(solved, l)).cwiseAbs().maxCoeff() < 1e-8 * loaded.cwiseAbs().maxCoeff());
  }
}

TEST_CASE("an end holds what its name says and nothing else", "[models][loads]") {
  LoadCase both = load_on({{EndHold::held}, {EndHold::held}}),
           guided = load_on({{EndHold::held}, {EndHold::guided}}),
           mirrored = load_on({{EndHold::guided}, {EndHold::held}}),
           ball = load_on({{EndHold::held}, {EndHold::ball}}), slanting = guided;
  for (LoadCase* load : {&both, &guided, &mirrored, &ball, &slanting}) load->forces = {places()[1]};
  slanting.line = LoadLine{{0.0 * mm, 0.0 * mm, 0.0 * mm}, {160.0 * mm, 40.0 * mm, -20.0 * mm}};
  const auto solved = solve_with_places({both, guided, mirrored, ball, slanting});
  const auto at = [&](std::size_t l, BoneEnd end) { return reaction(solved, l, end); };
  const double size = Eigen::Vector3d(-8.0, 30.0, 20.0).norm();
  // Held at both ends: neither moves, and both take their part along the bone.
  CHECK(distal_motion(solved, 0).cwiseAbs().maxCoeff() < 1e-12);
  CHECK(std::abs(at(0, BoneEnd::distal)(0)) > 1.0);
  // Guided: no force along the bone, so all of it at the other end; it does slide, and nothing else.
  CHECK(std::abs(at(1, BoneEnd::distal)(0)) < 1e-10 * size);
  CHECK(at(1, BoneEnd::proximal)(0) == Approx(8.0).epsilon(1e-10));
  CHECK(std::abs(distal_motion(solved, 1)(0)) > 1e-5);
  CHECK(distal_motion(solved, 1).tail<5>().cwiseAbs().maxCoeff() < 1e-12);
  CHECK(std::abs(at(2, BoneEnd::proximal)(0)) < 1e-10 * size);
  CHECK(at(2, BoneEnd::distal)(0) == Approx(8.0).epsilon(1e-10));
  // A ball takes no moment, nor a force along the bone.
  CHECK(at(3, BoneEnd::distal).tail<3>().cwiseAbs().maxCoeff() < 1e-10 * size);
  CHECK(std::abs(at(3, BoneEnd::distal)(0)) < 1e-10 * size);
  CHECK(at(3, BoneEnd::distal).segment<2>(1).norm() > 1.0);
  // Along a slanting line: the motion is along it, the force across it.
  const Eigen::Vector3d line = Eigen::Vector3d(160.0, 40.0, -20.0).normalized();
  const Eigen::Vector3d motion = distal_motion(solved, 4).head<3>();
  CHECK(motion.cross(line).norm() < 1e-10 * motion.norm());
  CHECK(std::abs(at(4, BoneEnd::distal).head<3>().dot(line)) < 1e-10 * size);
}

// One number is statically indeterminate, the ball's force; the guide's moment follows from it.
TEST_CASE("the moment at a guided end is that of statics", "[models][loads]") {
  LoadCase load = load_on({{EndHold::ball}, {EndHold::guided}});
  load.forces = {places()[0]};
  const auto solved = solve_with_places({load});
  const LoadPorts& ports = solved.assembly.load_ports;
  const Vector6 ball = reaction(solved, 0, BoneEnd::proximal), guide = reaction(solved, 0, BoneEnd::distal);
  CHECK(ball.tail<3>().cwiseAbs().maxCoeff() < 1e-9);
  const Eigen::Vector3d end = ports.distal_end.centre, force(10.0, -40.0, 25.0);
  const Eigen::Vector3d of_ball = (ports.proximal_end.centre - end).cross(Eigen::Vector3d(ball.head<3>()));
  const Eigen::Vector3d of_force = (ports.surfaces[0][0].position - end).cross(force);
  CHECK(difference(guide.tail<3>(), -of_ball - of_force) < 1e-9);
  CHECK(guide.tail<3>().norm() > 100.0);
}

TEST_CASE("forces and moments act on the end that gives way", "[models][loads]") {
  const auto wrench = [](const EndSupports& supports, BoneEnd end) {
    LoadCase load = with_parts(supports);
    const LoadPorts ports{{{0, 0}, {0.0, 0.0, 0.0}}, {{1, 0}, {tube_length, 0.0, 0.0}}, {}, {{}}};
    Vector6 sum = Vector6::Zero();
    const auto setups = set_up_loads({load}, ports);
    for (const auto& force : setups.front().forces)
      if (force.place.body == (end == BoneEnd::proximal ? 0U : 1U)) sum += force.force;
    return sum;
  };
  const Eigen::VectorXd on_distal = vector({-90.0, 0.0, 0.0, 230.0, 310.0, -170.0}), none = Vector6::Zero();
  const auto hold = [](EndHold proximal, EndHold distal) { return EndSupports{{proximal}, {distal}}; };
  using enum EndHold;
  using enum BoneEnd;
  CHECK(wrench(hold(held, EndHold::free), distal) == on_distal);
  CHECK(wrench(hold(held, EndHold::free), proximal) == none);
  CHECK(wrench(hold(EndHold::free, held), proximal) == -on_distal);  // the bone between bears the same
  CHECK(wrench(hold(EndHold::free, held), distal) == none);
  CHECK(wrench(hold(ball, ball), distal) == on_distal);
  CHECK(wrench(hold(ball, ball), proximal) == vector({0.0, 0.0, 0.0, 0.0, -310.0, 170.0}));
  CHECK(wrench(hold(elastic, ball), distal) == on_distal);
  CHECK(wrench(hold(elastic, ball), proximal) == none);
  CHECK(wrench(hold(ball, elastic), proximal) == -on_distal);
  CHECK(wrench(hold(ball, elastic), distal) == none);
  CHECK(wrench(hold(ball, guided), distal) == vector({-90.0, 0.0, 0.0, 0.0, 0.0, 0.0}));
  CHECK(wrench(hold(ball, guided), proximal) == vector({0.0, 0.0, 0.0, -230.0, -310.0, 170.0}));
  CHECK(wrench(hold(held, elastic), distal) == on_distal);
  CHECK(wrench(hold(held, guided), distal) == vector({-90.0, 0.0, 0.0, 0.0, 0.0, 0.0}));
}

TEST_CASE("the short words mean the same data", "[models][loads]") {
  const EndSupports balls{{EndHold::ball}, {EndHold::ball}}, held{{EndHold::held}, {EndHold::free}};
  CHECK(ball_joints() == balls);
  CHECK(cantilever() == held);
  CHECK(LoadCase{}.supports == ball_joints());
}

TEST_CASE("supports that leave a motion are named with it", "[models][loads]") {
  const auto fault = [](LoadCase load) -> std::string {
    try {
      solve_with_places({std::move(load)});
    } catch (const ModelError& error) {
      return error.what();
    }
    return "";
  };
  using Catch::Matchers::Contains;
  LoadCase sliding = load_on({{EndHold::guided}, {EndHold::guided}});
  sliding.axial_compression = 50.0 * newton;
  CHECK_THAT(fault(sliding), Contains("slide along the bone") && Contains("under load \"load\""));
  LoadCase turning = load_on({{EndHold::ball}, {EndHold::free}});
  turning.forces = {places()[1]};
  CHECK_THAT(fault(turning), Contains("is free to"));
  LoadCase loose = load_on({{EndHold::free}, {EndHold::free}});
  loose.forces = {places()[0]};
  CHECK_THAT(fault(loose), Contains("is free to"));
  LoadCase held = load_on({{EndHold::ball}, {EndHold::guided}});
  held.forces = {places()[0]};
  CHECK(fault(held).empty());
}

}  // namespace gapstrain
