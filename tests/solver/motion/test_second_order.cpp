// Strips under axial load held to the exact beam-column (Timoshenko and Gere, Theory of Elastic Stability, 2nd ed.
// 1961, ch. 1, from memory): a cantilever under P and a sideways force H at its tip moves by H L^3 / (3 EI) times
// 3 (tan u - u) / u^3 with u^2 = P L^2 / EI; with its tip guided as one of half its length; a strut pinned at both
// ends under P at eccentricity e bends by e (sec(u / 2) - 1) in its middle.
#include "solver/motion/second_order.h"

#include "tests/solver/motion/ported_strip.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>
#include <string>

namespace gapstrain {

using tests::hold_port;
using tests::PortedStrip;
using tests::strip_length;
using tests::strip_stiffness;

namespace {

enum class Supports { cantilever, guided, pinned };

struct Strut {
  Strut(int pieces, Supports supports, bool has_turns = true) : strip(pieces), kind(supports) {
    for (std::size_t k = 0; k < strip.centres.size(); ++k) {
      points.push_back({strip.centres[k], static_cast<Eigen::Index>(6 * k), has_turns});
      places.push_back({strip.centres[k], static_cast<Eigen::Index>(6 * k)});
    }
    std::vector<solver::Link> links;
    if (supports == Supports::pinned) {
      links = {hold_port(0, {0, 1, 2, 3, 5}), hold_port(strip.tip(), {1, 2})};
    } else {
      links = {hold_port(0, {0, 1, 2, 3, 4, 5})};
      if (supports == Supports::guided) links.push_back(hold_port(strip.tip(), {4}));
    }
    system = std::make_unique<solver::System>(std::vector<const solver::Condensed*>{&strip.condensed}, links);
    axes = solver::AxialSlopes(*system, {solver::read_axis(strip.motions(), points, places)});
  }

  solver::Solution solve(const solver::PortLoads& loads) const {
    std::vector<int> all;
    for (std::size_t k = 0; k < system->links().size(); ++k) all.push_back(static_cast<int>(k));
    return system->solve(all, loads);
  }

  static solver::PortState state(const solver::Solution& solution) {
    return {solution.port_forces, solution.amplitudes.front().col(0)};
  }

  // Leaves the last state in `bent`.
  solver::SecondOrder find(const solver::PortLoads& load, const solver::SecondOrderRule& rule = {}) {
    straight = bent = solve(load);
    const solver::PortState nothing{{Eigen::MatrixXd::Zero(strip.motions(), 1)}, Eigen::VectorXd::Zero(6)};
    const double work = load[0].cwiseProduct(straight.motions[0]).sum();
    return solver::find_second_order(axes, rule, nothing, state(straight), work,
                                     [&](const solver::PortLoads& more) {
                                       bent = solve({load[0] + more[0]});
                                       return state(bent);
                                     });
  }

  // P along the strip, sideways H at the tip, end moments P e of a pinned one.
  solver::PortLoads load(double axial, double sideways, double eccentricity = 0.0) const {
    solver::PortLoads loads = system->no_loads(1);
    loads[0](strip.tip(), 0) = -axial;
    loads[0](strip.tip() + 2, 0) = sideways;
    loads[0](strip.tip() + 4, 0) = -axial * eccentricity;
    loads[0](4, 0) = axial * eccentricity;
    return loads;
  }

  double euler() const {
    const double length = kind == Supports::cantilever ? 2.0 * strip_length : strip_length;
    return std::pow(std::numbers::pi / length, 2) * strip_stiffness;
  }

  PortedStrip strip;
  std::vector<solver::AxisPoint> points;
  std::vector<solver::ForcePlace> places;
  Supports kind;
  std::unique_ptr<solver::System> system;
  solver::AxialSlopes axes;
  solver::Solution straight, bent;
};

double tip_factor(double u) { return 3.0 * (std::tan(u) - u) / (u * u * u); }

}  // namespace

TEST_CASE("a pressed cantilever and a guided column move sideways as the exact beam-column does",
          "[solver][second-order]") {
  for (const auto supports : {Supports::cantilever, Supports::guided})
    for (const int pieces : {2, 4}) {
      Strut strut(pieces, supports);
      for (const double share : {0.1, 0.3, 0.6}) {
        const double axial = share * strut.euler();
        const auto found = strut.find(strut.load(axial, 1.0));
        CAPTURE(static_cast<int>(supports), pieces, share);
        REQUIRE(found.is_in());
        CHECK(found.residual <= 1e-10);
        REQUIRE(found.load_ratio);
        CHECK(*found.load_ratio == Approx(share).epsilon(0.01));
        const double u = std::numbers::pi / 2.0 * std::sqrt(share);
        const double tip = strut.bent.motions[0](strut.strip.tip() + 2, 0);
        const double without = strut.straight.motions[0](strut.strip.tip() + 2, 0);
        CHECK(tip / without == Approx(tip_factor(u)).epsilon(0.01));
      }
    }
}

TEST_CASE("without turns at its points an axis needs more pieces, and errs on the stiff side",
          "[solver][second-order]") {
  double last = 1.0;
  for (const int pieces : {5, 10, 20}) {
    Strut strut(pieces, Supports::guided, false);
    const auto found = strut.find(strut.load(0.6 * strut.euler(), 1.0));
    REQUIRE(found.is_in());
    const double factor =
        strut.bent.motions[0](strut.strip.tip() + 2, 0) / strut.straight.motions[0](strut.strip.tip() + 2, 0);
    const double error = 1.0 - factor / tip_factor(std::numbers::pi / 2.0 * std::sqrt(0.6));
    CAPTURE(pieces, error);
    CHECK(error > 0.0);
    CHECK(error < 0.3 * last);  // with the square of a piece's length
    last = error;
  }
  CHECK(last < 0.005);
}

TEST_CASE("an eccentrically pressed strut bends by the secant formula", "[solver][second-order]") {
  Strut strut(4, Supports::pinned);
  const Eigen::Index middle = strut.points[2].column + 2;
  for (const double share : {0.1, 0.3, 0.6}) {
    constexpr double eccentricity = 1.7;
    REQUIRE(strut.find(strut.load(share * strut.euler(), 0.0, eccentricity)).is_in());
    const double half = std::numbers::pi / 2.0 * std::sqrt(share);
    CAPTURE(share);
    CHECK(std::abs(strut.bent.motions[0](middle, 0)) ==
          Approx(eccentricity * (1.0 / std::cos(half) - 1.0)).epsilon(0.01));
  }
}

// The clamped end carries the moment of all forces about where they have gone to, H L + P times the tip's way.
TEST_CASE("forces are in balance about the deformed axis", "[solver][second-order]") {
  for (const bool has_turns : {true, false}) {
    Strut strut(5, Supports::cantilever, has_turns);
    const double axial = 0.5 * strut.euler();
    REQUIRE(strut.find(strut.load(axial, 1.0)).is_in());
    const double tip = strut.bent.motions[0](strut.strip.tip() + 2, 0);
    CHECK(std::abs(strut.bent.link_forces[0](4, 0)) == Approx(strip_length + axial * tip).epsilon(1e-9));
    CHECK(std::abs(strut.straight.link_forces[0](4, 0)) == Approx(strip_length).epsilon(1e-9));
    CHECK(std::abs(strut.bent.link_forces[0](0, 0)) == Approx(axial).epsilon(1e-9));
    CHECK(std::abs(strut.bent.link_forces[0](2, 0)) == Approx(1.0).epsilon(1e-9));
  }
}

TEST_CASE("below its share of the buckling load, in tension and beyond it nothing is added",
          "[solver][second-order]") {
  Strut strut(3, Supports::cantilever);
  const auto below = strut.find(strut.load(0.049 * strut.euler(), 1.0));
  CHECK_FALSE(below.is_in());
  REQUIRE(below.load_ratio);
  CHECK(*below.load_ratio == Approx(0.049).epsilon(0.01));
  CHECK(strut.find(strut.load(0.052 * strut.euler(), 1.0)).is_in());

  const auto pulled = strut.find(strut.load(-0.5 * strut.euler(), 1.0));
  CHECK_FALSE(pulled.is_in());
  CHECK_FALSE(pulled.load_ratio);

  const auto across = strut.find(strut.load(0.0, 1.0));
  CHECK_FALSE(across.is_in());

  const auto beyond = strut.find(strut.load(1.05 * strut.euler(), 1.0));
  CHECK_FALSE(beyond.is_in());
  REQUIRE(beyond.load_ratio);
  CHECK(*beyond.load_ratio == Approx(1.05).epsilon(0.01));
}

// Under tension with u^2 = -P L^2 / EI: 3 (u - tanh u) / u^3.
TEST_CASE("asked for always, a pulled cantilever is stiffer", "[solver][second-order]") {
  Strut strut(3, Supports::cantilever);
  const auto found = strut.find(strut.load(-0.5 * strut.euler(), 1.0), {.always = true});
  REQUIRE(found.is_in());
  const double u = std::numbers::pi / 2.0 * std::sqrt(0.5);
  CHECK(strut.bent.motions[0](strut.strip.tip() + 2, 0) / strut.straight.motions[0](strut.strip.tip() + 2, 0) ==
        Approx(3.0 * (u - std::tanh(u)) / (u * u * u)).epsilon(0.01));
}

// A load d beyond the tip presses on a rigid arm: the clamped end's moment counts the arm's end's way.
TEST_CASE("an arm between an end and its load counts as axis", "[solver][second-order]") {
  Strut strut(4, Supports::cantilever);
  const Eigen::Vector3d arm(30.0, 0.0, 5.0);
  const solver::PortLoads load = [&] {
    solver::PortLoads loads = strut.load(0.2 * strut.euler(), 0.0);
    loads[0](strut.strip.tip() + 4, 0) = 5.0 * loads[0](strut.strip.tip(), 0);  // (arm x force)_y
    return loads;
  }();
  const Eigen::Index motions = strut.strip.motions();
  strut.axes = solver::AxialSlopes(
      *strut.system, {solver::join_readings(motions, {solver::read_axis(motions, strut.points, strut.places),
                                                      solver::read_arm(motions, strut.strip.tip(), arm)})});
  REQUIRE(strut.find(load).is_in());
  const Eigen::VectorXd tip = strut.bent.motions[0].col(0).segment(strut.strip.tip(), 6);
  const double axial = -load[0](strut.strip.tip(), 0);
  const double way = tip(2) - 30.0 * tip(4);  // sideways, of the arm's end
  CHECK(std::abs(strut.bent.link_forces[0](4, 0)) == Approx(axial * (5.0 + std::abs(way))).epsilon(1e-9));
}

}  // namespace gapstrain
