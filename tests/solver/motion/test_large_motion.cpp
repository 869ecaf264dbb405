// Strips that bend and turn far, held to the elastica of a cantilever under a force across its end that keeps its
// direction (K. E. Bisshopp and D. C. Drucker 1945, Q. Appl. Math. 3, p. 272), by integration; and laws: what
// turns as a whole strains nothing, what is small is as the linear law has it, forces balance about the bent
// strip.
#include "solver/motion/large_motion.h"

#include "solver/motion/rotation.h"
#include "solver/motion/second_order.h"
#include "tests/solver/motion/ported_strip.h"

#include <Eigen/LU>

#include <catch2/catch.hpp>

#include <array>
#include <cmath>
#include <memory>
#include <random>

namespace gapstrain {

using tests::hold_port;
using tests::PortedStrip;
using tests::strip_length;

namespace {

// A chain from port to port that begins at one of them.
solver::TurningBody chain_of(const PortedStrip& strip, int first) {
  solver::TurningBody body;
  const auto add = [&](int port, int before) {
    solver::SparseMatrix reading(6, strip.motions());
    for (int k = 0; k < 6; ++k) reading.insert(k, 6 * port + k) = 1.0;
    const Eigen::Vector3d& place = strip.centres[static_cast<std::size_t>(port)];
    body.ports.push_back({place, 6 * port, true, body.nodes.size()});
    body.nodes.push_back({place, reading, before});
  };
  add(first, -1);
  const int last = static_cast<int>(strip.centres.size()) - 1;
  for (int port = first + 1; port <= last; ++port) add(port, port == first + 1 ? 0 : port - first - 1);
  for (int port = first - 1; port >= 0; --port) add(port, port == first - 1 ? 0 : last - port - 1);
  return body;
}

// Held at its first port.
struct BentStrip {
  explicit BentStrip(int pieces, int first = 0) : strip(pieces) {
    system = std::make_unique<solver::System>(std::vector<const solver::Condensed*>{&strip.condensed},
                                              std::vector<solver::Link>{hold_port(0, {0, 1, 2, 3, 4, 5})});
    turning = std::make_unique<solver::TurningSystem>(*system, std::vector{chain_of(strip, first)});
  }

  solver::PortLoads load(const Eigen::Vector3d& force, const Eigen::Vector3d& moment = Eigen::Vector3d::Zero()) {
    solver::PortLoads loads = system->no_loads(1);
    loads[0].block<3, 1>(strip.tip(), 0) = force;
    loads[0].block<3, 1>(strip.tip() + 3, 0) = moment;
    return loads;
  }

  solver::MovedState state(const solver::Solution& solution) const {
    return {solution.link_forces[0].col(0), {solution.motions[0].col(0)}};
  }

  solver::LargeMotion find(const solver::PortLoads& loads, int steps = 8,
                           const std::vector<solver::TurningArm>& arms = {}) {
    straight = system->solve({0}, loads);
    const solver::MovedState made{Eigen::VectorXd::Zero(6), {Eigen::VectorXd::Zero(strip.motions())}};
    return solver::find_large_motion(
        *turning, made, loads, arms, steps,
        [&](double share, const solver::PortLoads& more, const Eigen::VectorXd& initial) {
          bent = system->solve({0}, {share * loads[0] + more[0]}, initial);
          return state(bent);
        });
  }
  solver::Placed tip() const { return turning->place(state(bent).motions).ports[0][first_at_tip()]; }
  std::size_t first_at_tip() const {
    const auto& ports = turning->bodies()[0].ports;
    std::size_t k = 0;
    while (ports[k].column != strip.tip()) ++k;
    return k;
  }
  double stiffness() {  // EI, of the linear law
    return std::pow(strip_length, 3) /
           (3.0 * system->solve({0}, load({0.0, 0.0, 1.0})).motions[0](strip.tip() + 2, 0));
  }

  PortedStrip strip;
  std::unique_ptr<solver::System> system;
  std::unique_ptr<solver::TurningSystem> turning;
  solver::Solution straight, bent;
};

// turn'' = -H cos(turn), turn(0) = 0, turn'(1) = 0, length and EI 1: the force, and the way of the tip across and
// along, for a turn of the tip. By shooting from the tip, midpoint rule.
struct Elastica {
  double force = 0.0, across = 0.0, along = 0.0;
};
Elastica elastica(double tip_turn) {
  const auto shoot = [&](double force) {
    constexpr int steps = 20000;
    constexpr double ds = 1.0 / steps;
    double turn = tip_turn, slope = 0.0;
    Elastica found{force, 0.0, 0.0};
    for (int k = 0; k < steps; ++k) {  // from the tip inwards
      const double middle = turn - 0.5 * ds * slope, of_middle = slope + 0.5 * ds * force * std::cos(turn);
      found.across += ds * std::sin(middle);
      found.along += ds * std::cos(middle);
      slope += ds * force * std::cos(middle);
      turn -= ds * of_middle;
    }
    return std::pair{turn, found};
  };
  double low = 0.0, high = 20.0;
  for (int k = 0; k < 60; ++k) {
    const double middle = 0.5 * (low + high);
    (shoot(middle).first > 0.0 ? low : high) = middle;
  }
  return shoot(0.5 * (low + high)).second;
}

}  // namespace

TEST_CASE("a cantilever bends as the elastica has it", "[solver][large-motion]") {
  // P L^2 / EI = 1, 2 and 3 turn the tip by 0.4614, 0.7818 and 0.9860 (table, from memory).
  for (const auto& [turn, force] : {std::pair{0.46135, 1.0}, {0.78175, 2.0}, {0.98602, 3.0}})
    CHECK(elastica(turn).force == Approx(force).epsilon(1e-4));
  CHECK(elastica(0.78175).across == Approx(0.49346).epsilon(1e-4));
  CHECK(elastica(0.78175).along == Approx(1.0 - 0.16064).epsilon(1e-4));

  for (const int pieces : {2, 4, 8}) {
    BentStrip strip(pieces);
    const double bending = strip.stiffness();
    for (const double turn : {0.3, 0.6, 1.0}) {
      const Elastica exact = elastica(turn);
      const auto found = strip.find(strip.load({0.0, 0.0, exact.force * bending / (strip_length * strip_length)}));
      REQUIRE(found.settled);
      const Eigen::Vector3d way = strip.tip().place - strip.strip.centres.back();
      CAPTURE(pieces, turn, found.rounds, found.residual, found.turn_within, way.transpose(), exact.across);
      // Found: 0.17 % across and 0.11 % along at most with two pieces, 0.023 and 0.004 % with four.
      const double bound = pieces == 2 ? 2e-3 : 3e-4;
      CHECK(way.z() == Approx(strip_length * exact.across).epsilon(bound));
      CHECK(strip_length + way.x() == Approx(strip_length * exact.along).epsilon(bound));
      CHECK(found.turn == Approx(turn).epsilon(3e-4));
      // In the linear law the tip goes too far, and straight on.
      CHECK(strip.straight.motions[0](strip.strip.tip() + 2, 0) > (1.0 + 0.3 * turn * turn) * way.z());
    }
  }
}

TEST_CASE("a bent strip is in balance about where it is", "[solver][large-motion]") {
  BentStrip strip(5, 2);
  const Eigen::Vector3d force(-30.0, 60.0, 90.0), moment(2000.0, -500.0, 1500.0), arm(12.0, -5.0, 7.0);
  const Eigen::Vector3d about_port = moment + arm.cross(force);
  const auto found = strip.find(strip.load(force, about_port), 10, {{0, strip.strip.tip(), arm}});
  REQUIRE(found.settled);
  CHECK(found.turn > 0.5);
  const solver::Placed tip = strip.tip();
  const Eigen::Vector3d acts = tip.place + tip.frame * arm;  // the clamped port is at the origin and stays there
  const Eigen::VectorXd held = strip.bent.link_forces[0].col(0);
  CHECK((held.head<3>() - force).norm() <= 1e-8 * force.norm());
  CHECK((held.tail<3>() - moment - acts.cross(force)).norm() <= 1e-8 * acts.cross(force).norm());
}

TEST_CASE("where a chain begins changes nothing", "[solver][large-motion]") {
  const Eigen::Vector3d force(-20.0, 50.0, 80.0), moment(2000.0, 0.0, 0.0);
  std::vector<solver::Placed> tips;
  for (const int first : {0, 2, 4}) {
    BentStrip strip(4, first);
    REQUIRE(strip.find(strip.load(force, moment)).settled);
    tips.push_back(strip.tip());
  }
  for (const auto& tip : tips) {
    CHECK((tip.place - tips.front().place).norm() < 1e-7);
    CHECK((tip.frame - tips.front().frame).norm() < 1e-9);
  }
}

TEST_CASE("under a small load a strip bends as the linear law has it", "[solver][large-motion]") {
  BentStrip strip(4);
  const auto found = strip.find(strip.load({-1e-6, 2e-6, 3e-6}, {1e-5, 0.0, 2e-5}), 1);
  REQUIRE(found.settled);
  CHECK((strip.bent.motions[0] - strip.straight.motions[0]).norm() <= 1e-6 * strip.straight.motions[0].norm());
  CHECK((strip.bent.link_forces[0] - strip.straight.link_forces[0]).norm() <=
        1e-6 * strip.straight.link_forces[0].norm());
}

TEST_CASE("at small turns an axial load does what second-order effects have it do", "[solver][large-motion]") {
  BentStrip strip(4);
  std::vector<solver::AxisPoint> points;
  std::vector<solver::ForcePlace> places;
  for (const auto& centre : strip.strip.centres) {
    points.push_back({centre, static_cast<Eigen::Index>(6 * places.size()), true});
    places.push_back({centre, static_cast<Eigen::Index>(6 * places.size())});
  }
  const solver::AxialSlopes axes(*strip.system, {solver::read_axis(strip.strip.motions(), points, places)});
  const double buckling = std::pow(0.5 * std::numbers::pi / strip_length, 2) * strip.stiffness();
  for (const double share : {0.2, 0.5}) {
    const auto load = strip.load({-share * buckling, 0.0, 1e-3});
    solver::Solution pressed;
    const auto port_state = [](const solver::Solution& solution) {
      return solver::PortState{solution.port_forces, solution.amplitudes.front().col(0)};
    };
    const auto straight = strip.system->solve({0}, load);
    const solver::PortState nothing{{Eigen::MatrixXd::Zero(strip.strip.motions(), 1)}, Eigen::VectorXd::Zero(6)};
    const auto second = solver::find_second_order(axes, {.always = true}, nothing, port_state(straight),
                                                  load[0].cwiseProduct(straight.motions[0]).sum(),
                                                  [&](const solver::PortLoads& more) {
                                                    pressed = strip.system->solve({0}, {load[0] + more[0]});
                                                    return port_state(pressed);
                                                  });
    REQUIRE(second.is_in());
    const auto found = strip.find(load, 1);
    REQUIRE(found.settled);
    const Eigen::Index across = strip.strip.tip() + 2;
    const double way = strip.tip().place.z(), expected = pressed.motions[0](across, 0);
    CAPTURE(share, way, expected, strip.straight.motions[0](across, 0));
    CHECK(way == Approx(expected).epsilon(1e-3));
    CHECK(way > (1.0 + share) * strip.straight.motions[0](across, 0));
  }
}

namespace {

// Two strips one after another, joined by an elastic link, and by one row across, besides.
struct JoinedStrips {
  JoinedStrips() : one(3), other(3) {
    const Eigen::MatrixXd same = Eigen::MatrixXd::Identity(6, 6);
    Eigen::MatrixXd carried =
        same;  // the link's forces, about the other strip's first port, on the first one's last
    carried.block<3, 3>(3, 0) = solver::cross_matrix(gap);
    links.push_back({"joint", {{1, 0, same}, {0, one.tip(), -carried}}, 1e-6 * same, Eigen::VectorXd::Zero(6)});
    const Eigen::Vector3d direction = Eigen::Vector3d(1.0, 2.0, 2.0) / 3.0;
    Eigen::MatrixXd row = Eigen::MatrixXd::Zero(6, 1), back = row;
    row.topRows<3>() = direction;
    back << direction, (other_place(2) - one.centres[1]).cross(direction);
    links.push_back({"brace",
                     {{1, 12, row}, {0, 6, -back}},
                     Eigen::MatrixXd::Constant(1, 1, 1e-3),
                     Eigen::VectorXd::Constant(1, 0.2)});
    system = std::make_unique<solver::System>(
        std::vector<const solver::Condensed*>{&one.condensed, &other.condensed}, links);
    auto second = chain_of(other, 1);
    for (auto& node : second.nodes) node.place += offset;
    for (auto& port : second.ports) port.place += offset;
    turning = std::make_unique<solver::TurningSystem>(*system, std::vector{chain_of(one, 0), second});
  }
  Eigen::Vector3d other_place(std::size_t port) const { return other.centres[port] + offset; }

  Eigen::Vector3d gap{4.0, 0.0, 1.0};
  Eigen::Vector3d offset = Eigen::Vector3d(strip_length, 0.0, 0.0) + gap;
  PortedStrip one, other;
  std::vector<solver::Link> links;
  std::unique_ptr<solver::System> system;
  std::unique_ptr<solver::TurningSystem> turning;
};

}  // namespace

TEST_CASE("what turns as a whole by any angle strains nothing, and its forces turn with it",
          "[solver][large-motion]") {
  const JoinedStrips pair;
  std::mt19937 random(7);
  std::normal_distribution<double> normal;
  const auto vector = [&] { return Eigen::Vector3d(normal(random), normal(random), normal(random)); };
  // Those that leave each strip in balance.
  const Eigen::FullPivLU<Eigen::MatrixXd> balance(pair.system->rigid().transpose());
  REQUIRE(balance.dimensionOfKernel() == 1);
  const Eigen::VectorXd forces = 50.0 * balance.kernel().col(0).normalized();
  const solver::PortLoads none = pair.system->no_loads(1);
  const auto still = pair.system->port_forces(forces, none);
  for (const double angle : {0.01, 0.5, 1.5, 3.0}) {
    const Eigen::Vector3d turn = angle * vector().normalized(), shift = 30.0 * vector();
    const Eigen::Matrix3d rotation = solver::rotation_by(turn);
    std::vector<Eigen::VectorXd> motions;
    for (const auto& body : pair.turning->bodies()) {
      const Eigen::Vector3d& base = body.nodes.front().place;
      Eigen::VectorXd of_body(24);
      for (const auto& port : body.ports) {
        of_body.segment<3>(port.column) = shift + rotation * base - base + turn.cross(port.place - base);
        of_body.segment<3>(port.column + 3) = turn;
      }
      motions.push_back(of_body);
    }
    const auto placed = pair.turning->place(motions);
    for (std::size_t b = 0; b < placed.ports.size(); ++b)
      for (std::size_t p = 0; p < placed.ports[b].size(); ++p)
        CHECK((placed.ports[b][p].place - shift - rotation * pair.turning->bodies()[b].ports[p].place).norm() <
              1e-11);
    CHECK(pair.turning->deformations(placed, motions).norm() < 1e-11);
    const auto turned = pair.turning->port_forces(placed, motions, forces, none, {});
    for (std::size_t b = 0; b < turned.size(); ++b) CHECK((turned[b] - still[b]).norm() <= 1e-9 * still[b].norm());
  }
}

// The pull-back of forces is the work that they do: held to differences of deformations.
TEST_CASE("forces of links are those that do work on their deformations", "[solver][large-motion]") {
  const JoinedStrips pair;
  std::mt19937 random(3);
  std::normal_distribution<double> normal;
  std::vector<Eigen::VectorXd> motions;
  for (int b = 0; b < 2; ++b) {
    Eigen::VectorXd of_body(24);
    for (int k = 0; k < 24; ++k) of_body(k) = (k % 6 < 3 ? 3.0 : 0.15) * normal(random);
    motions.push_back(of_body);
  }
  const Eigen::VectorXd forces = Eigen::VectorXd::NullaryExpr(7, [&] { return normal(random); });
  const auto work = [&](const std::vector<Eigen::VectorXd>& at) {
    return forces.dot(pair.turning->deformations(pair.turning->place(at), at));
  };
  const auto found =
      pair.turning->port_forces(pair.turning->place(motions), motions, forces, pair.system->no_loads(1), {});
  for (std::size_t b = 0; b < 2; ++b)
    for (Eigen::Index k = 0; k < 24; ++k) {
      constexpr double step = 1e-5;
      auto above = motions, below = motions;
      above[b](k) += step;
      below[b](k) -= step;
      CAPTURE(b, k);
      CHECK(found[b](k, 0) == Approx(-(work(above) - work(below)) / (2.0 * step)).margin(1e-6));
    }
}

TEST_CASE("points between a chain's nodes are placed on its curve", "[solver][large-motion]") {
  BentStrip strip(4);
  REQUIRE(strip.find(strip.load({0.0, 0.0, 2.0 * strip.stiffness() / (strip_length * strip_length)})).settled);
  const auto placed = strip.turning->place(strip.state(strip.bent).motions);
  for (const auto& port : strip.turning->bodies()[0].ports) {
    const auto found =
        solver::place_point(placed.nodes[0], port.place, strip.bent.motions[0].block<3, 1>(port.column, 0));
    CHECK((found.place - placed.ports[0][port.node].place).norm() < 1e-9);
  }
}

}  // namespace gapstrain
