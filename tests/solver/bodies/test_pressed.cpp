#include "solver/bodies/pressed.h"

#include "tests/solver/bodies/contact_problems.h"
#include "tests/solver/bodies/pressed_joint.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <vector>

namespace gapstrain {

namespace {

using namespace tests;
using solver::PressedState;

// Forces of all pairs, N: (pairs x 3).
Eigen::MatrixXd pair_forces(const PressedState& state) {
  Eigen::MatrixXd all(state.pressure.size(), 3);
  all << state.pressure, state.traction;
  return all;
}

// Port motions of both bodies one below the other.
Eigen::MatrixXd motions(const solver::Solution& solution) {
  Eigen::MatrixXd all(solution.motions[0].rows() + solution.motions[1].rows(), solution.motions[0].cols());
  all << solution.motions[0], solution.motions[1];
  return all;
}

int count(const std::vector<char>& flags) { return static_cast<int>(std::count(flags.begin(), flags.end(), 1)); }

// The bodies' answer to link forces alone, as one solve of everything gives it.
void check_against_whole(const Joint& joint, const solver::System& system, const PressedState& state,
                         const solver::PortLoads& loads) {
  std::vector<solver::Link> links;
  for (std::size_t k = 0; k < state.solution.links.size(); ++k) {
    links.push_back(system.links()[static_cast<std::size_t>(state.solution.links[k])]);
    links.back().initial = state.solution.initial[k];
  }
  const auto whole = solve_monolithic(joint.whole_bodies(), links, loads);
  for (std::size_t b = 0; b < 2; ++b) {
    const auto& tube = joint.tubes()[b];
    const Eigen::MatrixXd displacements =
        tube.body.displacements(tube.ports, state.solution.port_forces[b], state.solution.amplitudes[b]);
    CHECK(difference(displacements, whole.displacements[b]) < 1e-8);
  }
  for (std::size_t k = 0; k < links.size(); ++k)
    CHECK((state.solution.link_forces[k] - whole.link_forces[k]).norm() < 1e-8 * state.pressure.sum());
}

}  // namespace

TEST_CASE("a pressed joint is the monolithic answer for its closed and sliding pairs", "[solver][contact]") {
  const Joint joint;
  const solver::System system = joint.system();
  const auto loads = at_far_end(system, skew);
  auto setting = mixed_setting(joint, system);
  for (const bool tied : {false, true}) {
    if (!tied) setting.links.pop_back();
    const auto state = solver::press(system, joint.pairs, setting, loads);
    const auto links = solver::frozen_links(system, joint.pairs, setting, state);
    const auto sticks = std::count_if(joint.pairs.begin(), joint.pairs.end(), [&](const auto& pair) {
      return std::find(links.begin(), links.end(), pair.tangent) != links.end();
    });
    CAPTURE(count(state.closed), count(state.slides), sticks);
    REQUIRE(count(state.closed) < pairs_around);
    REQUIRE(count(state.slides) > 1);
    REQUIRE(sticks > 1);
    int rough = 0;  // pairs in touch that rub
    for (int pair = 0; pair < pairs_around; ++pair)
      if (state.closed[static_cast<std::size_t>(pair)] != 0 && setting.friction(pair) > 0.0) ++rough;
    CHECK(sticks + count(state.slides) == rough);
    CHECK(state.complementarity < 1e-11);
    CHECK(state.friction_residual < 1e-11);
    CHECK(state.gap.minCoeff() >= 0.0);
    check_against_whole(joint, system, state, loads);
    setting = mixed_setting(joint, system);
  }
}

TEST_CASE("the numbering of pairs does not matter", "[solver][contact]") {
  const Joint joint;
  const solver::System system = joint.system();
  const auto loads = at_far_end(system, skew);
  const auto setting = mixed_setting(joint, system);
  const auto state = solver::press(system, joint.pairs, setting, loads);
  Random random(5);
  for (int trial = 0; trial < 4; ++trial) {
    const auto order = random.order(pairs_around);
    auto pairs = joint.pairs;
    auto renumbered = setting;
    for (std::size_t k = 0; k < order.size(); ++k) pairs[k] = joint.pairs[static_cast<std::size_t>(order[k])];
    renumbered.friction = setting.friction(order);
    const auto other = solver::press(system, pairs, renumbered, loads);
    CHECK(difference(pair_forces(other), pair_forces(state)(order, Eigen::all)) < 1e-9);
    CHECK(difference(motions(other.solution), motions(state.solution)) < 1e-9);
  }
}

TEST_CASE("a pressed joint is in balance and stores what it is supplied", "[solver][contact]") {
  const Joint joint;
  const solver::System system = joint.system();
  const auto loads = at_far_end(system, skew);
  auto setting = mixed_setting(joint, system);
  for (const bool tightened : {false, true}) {
    if (tightened) setting.driven = {{system.first_row(Joint::tie), 340.0}};
    const auto state = solver::press(system, joint.pairs, setting, loads);
    CHECK(solver::unbalanced_force(system, state.solution).maxCoeff() < 1e-9 * skew.norm());
    const auto energy = solver::energy_balance(system, state.solution, loads);
    CHECK(energy.stored(0) == Approx(energy.supplied(0)).epsilon(1e-9));
  }
}

TEST_CASE("without friction a state does not depend on the way there", "[solver][contact]") {
  const Joint joint;
  const solver::System system = joint.system();
  auto setting = mixed_setting(joint, system);
  setting.friction.setZero();
  const auto at_once = solver::press(system, joint.pairs, setting, at_far_end(system, skew));
  REQUIRE(count(at_once.closed) < pairs_around);
  for (const double first : {0.4, -0.7}) {  // pressed less, pulled open
    auto next = setting;
    const auto before = solver::press(system, joint.pairs, setting, at_far_end(system, first * skew));
    next.initial = before.initial;
    next.closed = before.closed;
    const auto after = solver::press(system, joint.pairs, next, at_far_end(system, skew));
    CHECK(difference(after.pressure, at_once.pressure) < 1e-9);
    CHECK(difference(motions(after.solution), motions(at_once.solution)) < 1e-9);
  }
}

TEST_CASE("a load put on and taken off leaves tractions where it made pairs slide", "[solver][contact]") {
  const Joint joint;
  const solver::System system = joint.system();
  auto setting = mixed_setting(joint, system);
  const Wrench axial = (Wrench() << -500.0, 0.0, 0.0, 0.0, 0.0, 0.0).finished();
  const Wrench sideways = (Wrench() << 0.0, 1310.0, -840.0, 2900.0, 0.0, 0.0).finished();
  const auto press = [&](const Wrench& wrench) {
    const auto state = solver::press(system, joint.pairs, setting, at_far_end(system, wrench));
    setting.initial = state.initial;
    return state;
  };
  const auto before = press(axial);
  REQUIRE(count(press(axial + sideways).slides) > 2);
  const auto after = press(axial);
  CHECK(difference(after.traction, before.traction) > 0.2);
}

TEST_CASE("a state is a fixed point", "[solver][contact]") {
  const Joint joint;
  const solver::System system = joint.system();
  const auto loads = at_far_end(system, skew);
  auto setting = mixed_setting(joint, system);
  const auto state = solver::press(system, joint.pairs, setting, loads);
  REQUIRE(count(state.slides) > 1);
  setting.initial = state.initial;
  for (const bool remembers : {false, true}) {
    if (remembers) setting.closed = state.closed;
    const auto again = solver::press(system, joint.pairs, setting, loads);
    CHECK(again.closed == state.closed);
    CHECK(difference(pair_forces(again), pair_forces(state)) < 1e-9);
    CHECK(difference(motions(again.solution), motions(state.solution)) < 1e-9);
    CHECK(difference(again.initial, state.initial) < 1e-9);
  }
}

TEST_CASE("a preload is the force that was given, stays when locked, and shares a later load",
          "[solver][contact]") {
  const Joint joint;
  const solver::System system = joint.system();
  auto setting = mixed_setting(joint, system);
  setting.driven = {{system.first_row(Joint::tie), 420.0}};
  const auto none = system.no_loads(1);
  const auto tightened = solver::press(system, joint.pairs, setting, none);
  CHECK(tightened.solution.link_forces[Joint::tie](0) == 420.0);
  CHECK(tightened.pressure.sum() > 200.0);

  setting.driven.clear();
  setting.initial = tightened.initial;
  const auto locked = solver::press(system, joint.pairs, setting, none);
  CHECK(locked.solution.link_forces[Joint::tie](0) == Approx(420.0).epsilon(1e-9));
  CHECK(difference(pair_forces(locked), pair_forces(tightened)) < 1e-9);
  CHECK(difference(motions(locked.solution), motions(tightened.solution)) < 1e-9);

  setting.initial = locked.initial;
  const double pull = 60.0;
  const auto pulled = solver::press(system, joint.pairs, setting, at_far_end(system, pull * Wrench::Unit(0)));
  const auto more = [&](int link) {
    const auto k = static_cast<std::size_t>(link);
    return pulled.solution.link_forces[k](0) - locked.solution.link_forces[k](0);
  };
  const double lost = locked.pressure.sum() - pulled.pressure.sum();
  CHECK(more(Joint::springs) + more(Joint::tie) + lost == Approx(pull).epsilon(1e-9));
  for (const double share : {more(Joint::springs), more(Joint::tie), lost}) CHECK(share > 0.02 * pull);
}

TEST_CASE("a pair that opens and closes again starts without traction", "[solver][contact]") {
  // Without transverse strain an axial load moves no spot sideways, so whatever traction there is comes from
  // shear.
  const Joint joint(0.0);
  const solver::System system = joint.system();
  auto setting = setting_of(system, joint.pairs, {Joint::support, Joint::springs}, 0.7);
  const Wrench axial = 500.0 * Wrench::Unit(0), shear = 900.0 * Wrench::Unit(1);
  const auto press = [&](const Wrench& wrench) {
    const auto state = solver::press(system, joint.pairs, setting, at_far_end(system, wrench));
    setting.initial = state.initial;
    return state;
  };
  const auto sheared = press(shear - axial);
  REQUIRE(count(sheared.closed) == pairs_around);
  CHECK(sheared.traction.colwise().sum().norm() > 10.0);
  REQUIRE(count(press(shear + axial).closed) == 0);
  const auto again = press(shear - axial);
  REQUIRE(count(again.closed) == pairs_around);
  CHECK(again.traction.cwiseAbs().maxCoeff() < 1e-9 * again.pressure.maxCoeff());
}

TEST_CASE("the frozen links give the tangent of a state in which nothing slides", "[solver][contact]") {
  const Joint joint;
  const solver::System system = joint.system();
  auto setting = mixed_setting(joint, system);
  setting.links = {Joint::support, Joint::springs};
  setting.friction *= 20.0;  // some pairs are smooth, the others stick
  const auto state = solver::press(system, joint.pairs, setting, at_far_end(system, skew));
  REQUIRE(count(state.slides) == 0);
  REQUIRE(count(state.closed) < pairs_around);
  setting.initial = state.initial;
  const Wrench direction = (Wrench() << 13.0, -21.0, 17.0, 110.0, -90.0, 140.0).finished();
  const double step = 1e-3;
  const auto further = solver::press(system, joint.pairs, setting, at_far_end(system, skew + step * direction));
  REQUIRE(further.closed == state.closed);
  const auto links = solver::frozen_links(system, joint.pairs, setting, state);
  const auto tangent = system.solve(links, at_far_end(system, direction), Eigen::VectorXd::Zero(system.rows()));
  const Eigen::MatrixXd moved = (motions(further.solution) - motions(state.solution)) / step;
  CHECK(difference(moved, motions(tangent)) < 1e-6);
}

}  // namespace gapstrain
