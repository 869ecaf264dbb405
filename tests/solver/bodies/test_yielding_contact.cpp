// Sections that yield beside contact and friction: a joint whose tie is a bar that yields at both ends, and random
// problems.
#include "solver/bodies/contact_with_flow.h"
#include "solver/bodies/yielding.h"
#include "tests/solver/bodies/contact_problems.h"
#include "tests/solver/bodies/pressed_joint.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <vector>

namespace gapstrain {

namespace {

using namespace tests;

constexpr double tie_radius = 0.8;

// Both ends of the joint's tie, from (-14, 2, 9) to (18.5, 2, 9), of a metal of which these forces ask `times`
// what its worse end bears at its full plastic state.
std::vector<solver::YieldSection> tie_sections(const solver::System& system, const Eigen::VectorXd& forces,
                                               double times) {
  const double diameter = 2.0 * tie_radius, shear = 1.0 / std::sqrt(3.0), cube = std::pow(diameter, 3);
  const double area = M_PI * diameter * diameter / 4.0;
  std::vector<solver::YieldSection> sections;
  const Eigen::Vector3d to(18.5, 2.0, 9.0);
  double asked = 0.0;
  for (const Eigen::Vector3d& place : {Eigen::Vector3d(-14.0, 2.0, 9.0), to}) {
    solver::YieldSection section;
    for (int row = 0; row < 6; ++row) section.rows.push_back(system.first_row(Joint::tie) + row);
    section.of_forces = -solver::rigid_transfer(place, to).transpose();
    section.full << area, shear * area, shear * area, shear * M_PI * cube / 12.0, cube / 6.0, cube / 6.0;
    section.curve = {{0.0, 0.3, 2.0}, {0.6, 0.9, 1.0}, 0.01};
    asked = std::max(asked, solver::demand(section.resultants(forces).cwiseQuotient(section.full)).value);
    sections.push_back(section);
  }
  for (auto& section : sections) section.full *= asked / times;
  return sections;
}

// What flow in these sections adds to the initial deformation of all rows.
Eigen::VectorXd bends_of(const solver::System& system, const std::vector<solver::YieldSection>& sections,
                         const Eigen::MatrixXd& deformed) {
  Eigen::VectorXd initial = Eigen::VectorXd::Zero(system.rows());
  for (std::size_t k = 0; k < sections.size(); ++k)
    initial(sections[k].rows) += sections[k].of_forces.transpose() * deformed.col(static_cast<Eigen::Index>(k));
  return initial;
}

int how_many(const std::vector<char>& flags) {
  return static_cast<int>(std::count(flags.begin(), flags.end(), 1));
}

}  // namespace

// Laws of the section, of contact and of friction, and what each is held against: the same joint with those bends
// put in as initial deformation, whose sections do not yield, is the very same state.
TEST_CASE("a joint whose tie yields keeps the laws of yield, of contact and of friction", "[solver][yield]") {
  const Joint joint;
  const solver::System system = joint.system();
  for (const bool rough : {false, true}) {
    auto setting = mixed_setting(joint, system);
    if (!rough) setting.friction.setZero();
    const auto loads = at_far_end(system, skew);
    const auto sections = tie_sections(system, solver::press(system, joint.pairs, setting, loads).forces, 1.5);
    const auto none = solver::Yielded::none(sections.size());
    const auto state = solver::press_yielding(system, joint.pairs, sections, setting, loads, none);
    INFO((rough ? "rough" : "smooth") << ", flow " << state.yielded.flow.transpose());
    REQUIRE(state.elastic);
    CHECK(state.yielded.flow.maxCoeff() > 0.0);
    CHECK(state.residual < 1e-8);
    CHECK(state.pressed.complementarity < 1e-8);
    CHECK(state.pressed.friction_residual < 1e-8);
    CHECK(state.pressed.gap.minCoeff() >= -1e-9);
    REQUIRE(how_many(state.pressed.closed) > 2);
    REQUIRE(how_many(state.pressed.closed) < pairs_around);
    if (rough) REQUIRE(how_many(state.pressed.slides) > 1);
    // What touches, and how hard, is another than without yield.
    CHECK(difference(state.pressed.pressure, state.elastic->pressure) > 1e-4);

    auto bent = setting;
    bent.initial += bends_of(system, sections, state.yielded.deformed);
    const auto same = solver::press(system, joint.pairs, bent, loads);
    CHECK(difference(same.pressure, state.pressed.pressure) < 1e-6);
    CHECK(difference(same.forces, state.pressed.forces) < 1e-6);
    CHECK(same.closed == state.pressed.closed);
    CHECK(solver::unbalanced_force(system, state.pressed.solution).maxCoeff() < 1e-8 * skew.norm());
    const auto energy = solver::energy_balance(system, state.pressed.solution, loads);
    CHECK(energy.stored(0) == Approx(energy.supplied(0)).epsilon(1e-8));
  }
}

// All pairs stay closed, so that forces and deformations change along straight lines and work is their mean times
// the change.
TEST_CASE("with contact and friction work is stored or dissipated, and neither yield nor friction gives any back",
          "[solver][yield]") {
  const Joint joint;
  const solver::System system = joint.system();
  auto setting = setting_of(system, joint.pairs, {Joint::support, Joint::springs, Joint::tie}, 0.005);
  const Wrench axial = (Wrench() << -900.0, 0.0, 0.0, 0.0, 0.0, 0.0).finished();
  const Wrench aside = (Wrench() << 0.0, 300.0, -200.0, 6000.0, 0.0, 0.0).finished();
  const auto sections = tie_sections(
      system, solver::press(system, joint.pairs, setting, at_far_end(system, axial + aside)).forces, 2.0);
  auto now = solver::Yielded::none(sections.size());
  const auto load = [&](const Wrench& wrench) {
    auto state = solver::press_yielding(system, joint.pairs, sections, setting, at_far_end(system, wrench), now);
    setting.initial = state.pressed.initial;
    setting.closed = state.pressed.closed;
    now = state.yielded;
    CHECK(state.residual < 1e-8);
    CHECK(how_many(state.pressed.closed) == pairs_around);
    return state;
  };
  Wrench before = axial;
  auto old = load(before);
  double by_yield = 0.0, by_friction = 0.0;
  for (const double share : {0.5, 1.0, 0.2, -0.8, 0.0}) {
    const Eigen::VectorXd initial = setting.initial;
    const Wrench wrench = axial + share * aside;
    const auto state = load(wrench);
    const Eigen::VectorXd change = setting.initial - initial;
    const Eigen::VectorXd mean = 0.5 * (state.pressed.forces + old.pressed.forces);
    const Eigen::VectorXd bends = bends_of(system, sections, state.yielded.deformed - old.yielded.deformed);
    const auto energy = [&](const solver::PressedState& pressed) {
      return solver::energy_balance(system, pressed.solution, at_far_end(system, wrench)).stored(0);
    };
    const auto motion = [&](const solver::PressedState& pressed) -> Eigen::VectorXd {
      return pressed.solution.motions[1].middleRows<6>(Tube::ring(1)).col(0);
    };
    const double work = 0.5 * (before + wrench).dot(motion(state.pressed) - motion(old.pressed));
    const double dissipated = mean.dot(change), yielding = mean.dot(bends);
    INFO(share << ": work " << work << ", dissipated " << dissipated << ", by yield " << yielding);
    CHECK(work == Approx(energy(state.pressed) - energy(old.pressed) + dissipated).margin(1e-7));
    CHECK(state.pressed.forces.dot(bends) >= 0.0);
    CHECK(state.pressed.forces.dot(change - bends) >= -1e-9);
    by_yield += yielding;
    by_friction += state.pressed.forces.dot(change - bends);
    before = wrench;
    old = state;
  }
  CHECK(by_yield > 0.0);
  CHECK(by_friction > 0.0);
}

TEST_CASE("contact and flow of random problems keep both laws at once", "[solver][yield]") {
  Random random(11);
  int flowing = 0;
  for (int trial = 0; trial < 60; ++trial) {
    const int pairs = random.whole(1, 12), count = random.whole(1, 5);
    const auto problem = random_problem(random, Kind::full, pairs, trial % 2 == 1);
    const auto rows = problem.misfit.size();
    std::vector<solver::YieldSection> sections(static_cast<std::size_t>(count));
    for (auto& section : sections) section.curve = {{0.0, 0.2, 1.0}, {0.6, 0.9, 1.0}, 0.01};
    // Part of what pairs and sections see of each other is one body, so that both are compliances of something.
    const Eigen::LLT<Eigen::MatrixXd> cholesky(problem.compliance);
    const auto elastic = solver::solve_contact(problem);
    Eigen::VectorXd force(rows);
    force << elastic.pressure, elastic.traction;
    const double energy = force.dot(problem.compliance * force);
    const double scale = energy > 0.0 ? 1.0 / std::sqrt(energy) : 1.0;
    solver::FlowBesideContact beside;
    const Eigen::MatrixXd mixing = random.normal(6 * count, rows);
    beside.by_force = scale * mixing * Eigen::MatrixXd(cholesky.matrixL()).transpose();
    const Eigen::MatrixXd own = random.normal(6 * count, 6 * count);
    beside.flow.compliance = scale * scale * (mixing * mixing.transpose() + 0.1 * own * own.transpose());
    beside.flow.shares = 0.5 * random.normal(6 * count, 1);
    beside.flow.flow_before = Eigen::VectorXd::Zero(count);
    for (auto& section : sections) beside.flow.sections.push_back(&section);
    const auto answer = solver::solve_yielding_contact(problem, beside, elastic.closed, force, {});
    INFO("trial " << trial << ", " << pairs << " pairs, " << count << " sections, " << answer.rounds << " rounds");
    if (answer.flow.flow.maxCoeff() > 0.0) ++flowing;

    force << answer.contact.pressure, answer.contact.traction;
    auto with_flow = problem;
    with_flow.misfit += beside.by_force.transpose() * answer.flow.deformation;
    CHECK(breach(with_flow, answer.contact) < 1e-6);
    const Eigen::VectorXd shares =
        beside.flow.shares + beside.by_force * force - beside.flow.compliance * answer.flow.deformation;
    CHECK((shares - answer.flow.shares).norm() < 1e-8 * (1.0 + shares.norm()));
    for (int k = 0; k < count; ++k) {
      const auto asked = solver::demand(shares.segment<6>(6 * k));
      const double over = asked.value - sections[0].curve.at(answer.flow.flow(k)).share;
      CHECK((answer.flow.flow(k) > 0.0 ? std::abs(over) : over) < 1e-7);
      CHECK((answer.flow.deformation.segment<6>(6 * k) - answer.flow.flow(k) * asked.gradient).norm() <
            1e-7 * (1.0 + answer.flow.flow(k)));
    }
  }
  CHECK(flowing > 20);
}

TEST_CASE("the tangent of flow is its derivative", "[solver][yield]") {
  Random random(3);
  std::vector<solver::YieldSection> sections(4);
  for (auto& section : sections) section.curve = {{0.0, 0.2, 1.0}, {0.6, 0.9, 1.0}, 0.05};
  const Eigen::MatrixXd half = random.normal(24, 24);
  solver::FlowProblem problem;
  for (auto& section : sections) problem.sections.push_back(&section);
  problem.compliance = 0.2 * half * half.transpose();
  problem.shares = random.normal(24, 1);
  problem.flow_before = Eigen::VectorXd::Zero(4);
  const auto answer = solver::find_flow(problem);
  REQUIRE((answer.flow.array() > 0.0).count() >= 2);
  const Eigen::MatrixXd tangent = solver::flow_tangent(problem, answer);
  CHECK((tangent - tangent.transpose()).norm() == 0.0);
  const Eigen::VectorXd direction = random.normal(24, 1);
  const double step = 1e-5;
  const auto moved = [&](double by) {
    auto other = problem;
    other.shares += by * direction;
    return solver::find_flow(other, answer).deformation;
  };
  const Eigen::VectorXd slope = (moved(step) - moved(-step)) / (2.0 * step);
  CHECK((tangent * direction - slope).norm() < 1e-4 * slope.norm());
}

}  // namespace gapstrain
