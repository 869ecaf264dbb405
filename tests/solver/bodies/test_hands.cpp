#include "solver/bodies/pressed.h"

#include "tests/solver/bodies/tubes_in_line.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace gapstrain {

namespace {

using namespace tests;
using Wrench = Eigen::Matrix<double, 6, 1>;

// A tube that stands on another one, which is held at its foot: nothing but contact holds the upper one.
// `incline`: of the plane of contact, towards +y. Two more links may be put in: a guide that stops the upper
// tube's head from going sideways and turning about x, statically determinate, and a screw between head and foot,
// pulling along x.
class Standing {
 public:
  static constexpr int support = 0, guide = 1, screw = 2;

  Standing() {
    const auto material = solver::isotropic_shell(15500.0, 0.31);
    tubes_.push_back(make_tube(5.1, 1.7, -14.0, 14.0, material, 1));
    tubes_.push_back(make_tube(5.1, 1.3, 0.0, 18.5, material, 0));
  }

  solver::System system(double incline = 0.0, const Surface& surface = {}) {
    const Eigen::MatrixXd along = Eigen::MatrixXd::Identity(6, 1);
    Eigen::MatrixXd sideways = Eigen::MatrixXd::Zero(6, 3);
    sideways.block<3, 3>(1, 0).setIdentity();  // u_y, u_z, theta_x
    std::vector<solver::Link> links = {
        {"support", {at_ring(0, 0)}, Eigen::MatrixXd::Zero(6, 6), Eigen::VectorXd::Zero(6)},
        {"guide", {at_ring(1, 1, sideways)}, Eigen::MatrixXd::Zero(3, 3), Eigen::VectorXd::Zero(3)},
        {"screw",
         {at_ring(1, 1, along), at_ring(0, 0, -along)},
         Eigen::MatrixXd::Constant(1, 1, 8e-5),
         Eigen::VectorXd::Zero(1)}};
    pairs = add_pairs(links, 0, 1, {std::cos(incline), std::sin(incline), 0.0}, surface);
    return {{&tubes_[0].condensed, &tubes_[1].condensed}, std::move(links)};
  }

  solver::PressedState press(const solver::System& system, double friction, const Wrench& load,
                             const Wrench& at = Wrench::Zero(), std::vector<int> links = {support}) const {
    auto setting = setting_of(system, pairs, std::move(links), friction);
    setting.hands.at.tail<6>() = at;
    auto loads = system.no_loads(1);
    loads[1].middleRows<6>(Tube::ring(1)) = load;
    return solver::press(system, pairs, setting, loads);
  }

  std::vector<solver::ContactPair> pairs;

 private:
  std::vector<Tube> tubes_;
};

// Off the middle, within the kern of the section.
const Wrench pressing = (Wrench() << -370.0, 0.0, 0.0, 0.0, 310.0, -190.0).finished();

const Wrench lifted = (Wrench() << 0.4, -0.2, 0.3, 0.002, 0.004, -0.003).finished();

}  // namespace

TEST_CASE("what nothing holds stays in the hands", "[solver][contact]") {
  Standing standing;
  const auto system = standing.system();
  const auto state = standing.press(system, 0.3, Wrench::Zero(), lifted);
  CHECK(difference(state.solution.amplitudes[1], lifted) < 1e-12);
  CHECK(state.gap.minCoeff() > 0.3);
  CHECK(state.pull.norm() == 0.0);
  CHECK(state.free_motions.cols() == 6);

  const auto apart = standing.system(0.0, {1e-6, 2e-6, 0.17});
  const auto further = standing.press(apart, 0.3, Wrench::Zero(), 0.4 * Wrench::Unit(0));
  CHECK(difference(further.gap, Eigen::VectorXd::Constant(pairs_around, 0.57)) < 1e-12);
}

TEST_CASE("a body that stands on smooth contact is held as by supports without reaction", "[solver][contact]") {
  Standing standing;
  const auto system = standing.system();
  const Wrench outside_kern = 2.7 * pressing + 1.7 * 370.0 * Wrench::Unit(0);
  for (const Wrench& load : {pressing, outside_kern}) {
    const auto guided = standing.press(system, 0.0, load, Wrench::Zero(), {Standing::support, Standing::guide});
    REQUIRE(guided.solution.link_forces[Standing::guide].norm() < 1e-9 * load.norm());
    REQUIRE((guided.gap.maxCoeff() > 0.0) == (load == outside_kern));
    for (const Wrench& at : {Wrench(Wrench::Zero()), lifted}) {
      const auto state = standing.press(system, 0.0, load, at);
      CHECK(state.pull.norm() < 1e-9 * load.norm());
      CHECK(difference(state.pressure, guided.pressure) < 1e-8);
      CHECK((state.gap - guided.gap).cwiseAbs().maxCoeff() < 1e-9);
      for (const int motion : {0, 4, 5})  // the head's way along x, and its tilt
        CHECK(state.solution.motions[1](Tube::ring(1) + motion) ==
              Approx(guided.solution.motions[1](Tube::ring(1) + motion)).epsilon(1e-8));
      CHECK(state.free_motions.cols() == 3);
    }
  }
}

TEST_CASE("a body that stands on rough contact needs no hands", "[solver][contact]") {
  Standing standing;
  const auto system = standing.system();
  const Wrench load = pressing + (Wrench() << 0.0, 21.0, -13.0, 90.0, -240.0, -385.0).finished();
  const auto state = standing.press(system, 0.9, load);
  REQUIRE(std::count(state.slides.begin(), state.slides.end(), 1) == 0);
  CHECK(state.pull.norm() < 1e-9 * load.norm());
  CHECK(state.free_motions.cols() == 0);
  const Eigen::Vector3d axis = Eigen::Vector3d::UnitX();
  const Eigen::Vector3d carried =
      state.pressure.sum() * axis + across_normal(axis) * state.traction.colwise().sum().transpose();
  CHECK((carried + load.head<3>()).norm() < 1e-9 * load.norm());  // forces on the second side
  auto loads = system.no_loads(1);
  loads[1].middleRows<6>(Tube::ring(1)) = load;
  const auto held = system.solve(state.solution.links, loads);  // without hands
  CHECK(difference(state.solution.motions[1], held.motions[1]) < 1e-8);
}

TEST_CASE("a screw draws a loose body home, and holds it once locked", "[solver][contact]") {
  const double gap = 0.17, force = 290.0;
  Standing standing;
  const auto system = standing.system(0.0, {2e-6, 3e-6, gap});
  auto setting = setting_of(system, standing.pairs, {Standing::support, Standing::screw}, 0.4);
  setting.driven = {{system.first_row(Standing::screw), force}};
  const auto tightened = solver::press(system, standing.pairs, setting, system.no_loads(1));
  CHECK(tightened.pull.norm() < 1e-9 * force);
  CHECK(tightened.pressure.sum() == Approx(force).epsilon(1e-9));
  CHECK(tightened.solution.motions[1](Tube::ring(0)) < -gap);
  CHECK(tightened.free_motions.cols() == 0);

  setting.driven.clear();
  setting.initial = tightened.initial;
  const auto locked = solver::press(system, standing.pairs, setting, system.no_loads(1));
  CHECK(locked.solution.link_forces[1](0) == Approx(force).epsilon(1e-8));
  CHECK(difference(locked.pressure, tightened.pressure) < 1e-8);
  CHECK(difference(locked.solution.motions[1], tightened.solution.motions[1]) < 1e-8);
}

TEST_CASE("on an incline a body slides away when the tangent exceeds the friction", "[solver][contact]") {
  Standing standing;
  const double degree = std::numbers::pi / 180.0, weight = 80.0;
  const auto pull = [&](double incline, double friction) {
    const auto system = standing.system(incline);
    return standing.press(system, friction, -weight * Wrench::Unit(0)).pull.norm();
  };
  for (const double friction : {0.13, 0.3, 0.62}) {
    double holds = 0.0, slides = 44.0 * degree;
    while (slides - holds > 0.01 * degree) {
      const double angle = 0.5 * (holds + slides);
      (pull(angle, friction) < 1e-6 * weight ? holds : slides) = angle;
    }
    CAPTURE(friction, holds / degree, std::atan(friction) / degree);
    CHECK(std::abs(holds - std::atan(friction)) < 0.02 * degree);
    const double steeper = std::atan(friction) + 6.0 * degree;
    // What friction leaves of the weight's share down the incline.
    CHECK(pull(steeper, friction) ==
          Approx(weight * (std::sin(steeper) - friction * std::cos(steeper))).epsilon(1e-3));
  }
}

}  // namespace gapstrain
