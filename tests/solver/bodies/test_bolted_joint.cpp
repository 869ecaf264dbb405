// The classic bolted joint: bolt and clamped parts are springs side by side until the joint opens. Shigley's
// Mechanical Engineering Design, chapter on screws and fasteners (joint stiffness constant C); from memory.
#include "tests/solver/bodies/tubes_in_line.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <optional>

namespace gapstrain {

namespace {

using namespace tests;

// A tube as bolt inside two tubes as clamped parts, joined at both outer ends by rigid heads, contact all round
// between the parts. Without transverse strain every stress is uniform and each tube a spring EA/L.
struct BoltedJoint {
  static constexpr double give = 3e-5;  // mm/N a pair
  static constexpr double first_length = 17.0, second_length = 24.0;

  std::vector<Tube> tubes;         // bolt, first part, second part
  double bolt = 0.0, parts = 0.0;  // stiffness, N/mm
  std::optional<solver::System> system;
  std::vector<solver::ContactPair> pairs;
  solver::Setting setting;

  // `misfit`: by how much the bolt is too short; `gap`: between the parts.
  BoltedJoint(double misfit, double gap, double friction) {
    const double bolt_modulus = 113000.0, part_modulus = 16500.0;
    const auto bolt_material = solver::isotropic_shell(bolt_modulus, 0.0);
    const auto part_material = solver::isotropic_shell(part_modulus, 0.0);
    tubes.push_back(make_tube(4.3, 0.9, 0.0, first_length + second_length, bolt_material, 1));
    tubes.push_back(make_tube(7.1, 1.6, 0.0, first_length, part_material, 1));
    tubes.push_back(make_tube(7.1, 1.6, first_length, second_length, part_material, 0));
    const double length = first_length + second_length;
    bolt = bolt_modulus * tube_area(4.3, 0.9) / length;
    parts = 1.0 / (length / (part_modulus * tube_area(7.1, 1.6)) + give / pairs_around);

    const Eigen::MatrixXd rigid = Eigen::MatrixXd::Zero(6, 6), same = Eigen::MatrixXd::Identity(6, 6);
    std::vector<solver::Link> links = {
        {"ground", {at_ring(0, 0, same)}, rigid, Eigen::VectorXd::Zero(6)},
        {"head", {at_ring(0, 0, same), at_ring(1, 0, -same)}, rigid, Eigen::VectorXd::Zero(6)},
        {"nut", {at_ring(0, 1, same), at_ring(2, 1, -same)}, rigid, misfit * Eigen::VectorXd::Unit(6, 0)}};
    pairs = add_pairs(links, 1, 2, Eigen::Vector3d::UnitX(), {give, 2.0 * give, gap});
    system.emplace(
        std::vector<const solver::Condensed*>{&tubes[0].condensed, &tubes[1].condensed, &tubes[2].condensed},
        links);
    setting = setting_of(*system, pairs, {0, 1, 2}, friction);
  }

  // Forces in bolt (tension) and joint (pressure), and how far the loaded end moves, under a pull on both ends.
  struct Answer {
    double bolt, joint, travel;
  };
  Answer pull(double load) const {
    auto loads = system->no_loads(1);
    loads[0](Tube::ring(1)) = load;
    const auto state = solver::press(*system, pairs, setting, loads);
    CHECK(solver::unbalanced_force(*system, state.solution).maxCoeff() < 1e-8 * std::max(1.0, std::abs(load)));
    // The nut pulls the bolt's end back by its own link's force: what the load leaves is in the bolt.
    return {load - state.solution.link_forces[2](0), state.pressure.sum(),
            state.solution.motions[0](Tube::ring(1))};
  }
};

}  // namespace

TEST_CASE("a bolt that is too short presses its joint by the misfit over the summed compliances",
          "[solver][contact]") {
  for (const double friction : {0.0, 0.3}) {
    const double misfit = 0.037;
    const BoltedJoint joint(misfit, 0.0, friction);
    const double preload = misfit / (1.0 / joint.bolt + 1.0 / joint.parts);
    const auto tightened = joint.pull(0.0);
    UNSCOPED_INFO("deviation " << tightened.joint / preload - 1.0);
    CHECK(tightened.joint == Approx(preload).epsilon(1e-9));
    CHECK(tightened.bolt == Approx(preload).epsilon(1e-9));
  }
}

TEST_CASE("bolt and parts share a load by stiffness until the joint opens", "[solver][contact]") {
  const BoltedJoint joint(0.037, 0.0, 0.2);
  const double preload = 0.037 / (1.0 / joint.bolt + 1.0 / joint.parts);
  const double constant = joint.bolt / (joint.bolt + joint.parts);
  const double opening = preload / (1.0 - constant);
  for (const double share : {-0.4, 0.23, 0.71, 0.999}) {
    const double load = share * opening;
    const auto loaded = joint.pull(load);
    CHECK(loaded.bolt == Approx(preload + constant * load).epsilon(1e-9));
    CHECK(loaded.joint == Approx(preload - (1.0 - constant) * load).epsilon(1e-9));
  }
  for (const double share : {1.001, 1.9}) {
    const auto open = joint.pull(share * opening);
    CHECK(open.joint == 0.0);
    CHECK(open.bolt == Approx(share * opening).epsilon(1e-9));
  }
}

TEST_CASE("a gap that closes under load bends the load-displacement line where bolt and gap say",
          "[solver][contact]") {
  const double gap = 0.021;
  const BoltedJoint joint(0.0, gap, 0.0);
  const double closing = gap * joint.bolt;
  const auto slope = [&](double from, double to) {
    return (to - from) / (joint.pull(-from).travel - joint.pull(-to).travel);
  };
  CHECK(slope(0.1 * closing, 0.6 * closing) == Approx(joint.bolt).epsilon(1e-9));
  CHECK(slope(1.3 * closing, 2.9 * closing) == Approx(joint.bolt + joint.parts).epsilon(1e-9));
  CHECK(joint.pull(-0.999 * closing).joint == 0.0);
  CHECK(joint.pull(-1.001 * closing).joint > 0.0);
  // The line after closing, followed back to where the joint carries nothing.
  const double one = joint.pull(-1.3 * closing).joint, other = joint.pull(-2.9 * closing).joint;
  CHECK(closing * (1.3 - 1.6 * one / (other - one)) == Approx(closing).epsilon(1e-9));
}

}  // namespace gapstrain
