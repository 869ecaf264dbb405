#include "solver/bodies/system.h"

#include "solver/bodies/stress.h"
#include "solver/elements/beam.h"
#include "tests/framework/numbers.h"
#include "tests/solver/bodies/monolithic.h"
#include "tests/solver/bodies/structured_meshes.h"

#include <Eigen/Dense>

#include <catch2/catch.hpp>

namespace gapstrain {

namespace {

using tests::difference;
// A strip over two tubes with a gap between them, joined by four oblique bars, one tube's far end held, the
// other's loaded: a construct in miniature. All of it may be turned and moved as a whole.
struct Miniature {
  std::vector<solver::Body> bodies;
  std::vector<solver::Ports> ports;
  std::vector<solver::Condensed> condensed;
  std::vector<solver::Link> links;  // four bars, then the support
  std::vector<int> all_links = {0, 1, 2, 3, 4};

  explicit Miniature(const Eigen::Isometry3d& motion = Eigen::Isometry3d::Identity()) {
    const auto metal = solver::isotropic_shell(110000.0, 0.33);
    const auto bone = solver::orthotropic_shell(17000.0, 11500.0, 0.41, 3300.0, 3200.0, 3600.0);
    auto shifted = Eigen::Isometry3d(Eigen::Translation3d(0.0, 0.0, 8.2));
    const auto plate = tests::moved(*tests::strip(40.0, 6.0, 1.9, 20, 6), motion * shifted);
    const auto proximal = tests::moved(*tests::tube(5.1, 1.7, -11.0, 28.5, 16, 14), motion);
    const auto distal = tests::moved(*tests::tube(5.1, 1.7, 21.5, 31.0, 16, 15), motion);
    const Eigen::Vector3d axis = motion.linear() * Eigen::Vector3d::UnitX();

    const std::vector<solver::Shell> shells = {{plate, metal, axis}, {proximal, bone, axis}, {distal, bone, axis}};
    const auto port_near = [&](const solver::Shell& shell, const Eigen::Vector3d& place, double radius) {
      std::vector<int> nodes;
      const Eigen::Vector3d centre = motion * place;
      for (Eigen::Index node = 0; node < shell.mesh->nodes.rows(); ++node)
        if ((shell.mesh->nodes.row(node).transpose() - centre).norm() < radius)
          nodes.push_back(static_cast<int>(node));
      return solver::reaction_port(shell, nodes, centre, 3.0 * radius, motion.linear(), solver::RimModes::rigid);
    };
    const std::array<double, 4> heads = {4.0, 12.0, 28.0, 36.0};
    std::vector<std::vector<solver::Port>> all_ports(3);
    for (const double x : heads) all_ports[0].push_back(port_near(shells[0], {x, 0.0, 8.2}, 1.6));
    all_ports[1].push_back(port_near(shells[1], {3.0, 0.0, 5.1}, 2.1));
    all_ports[1].push_back(port_near(shells[1], {11.0, 0.0, 5.1}, 2.1));
    all_ports[2].push_back(port_near(shells[2], {29.0, 0.0, 5.1}, 2.1));
    all_ports[2].push_back(port_near(shells[2], {37.0, 0.0, 5.1}, 2.1));
    const auto end = [&](const solver::Shell& shell, const std::string& group, double x) {
      return solver::reaction_port(shell, shell.mesh->groups.at(group), motion * Eigen::Vector3d(x, 0.0, 0.0), 7.0,
                                   motion.linear(), solver::RimModes::rigid);
    };
    all_ports[1].push_back(end(shells[1], "end:0", -11.0));
    all_ports[2].push_back(end(shells[2], "end:1", 52.5));
    for (std::size_t b = 0; b < 3; ++b) {
      ports.push_back(solver::join_ports(shells[b].unknowns(), all_ports[b]));
      bodies.emplace_back(shells[b]);
      condensed.push_back(bodies[b].condense(ports[b]));
    }
    const auto section = solver::solid_circle(1.9, 186000.0, 0.31);
    for (std::size_t k = 0; k < 4; ++k) {
      const std::size_t bone_body = k < 2 ? 1 : 2;
      const Eigen::Vector3d from = all_ports[0][k].centre;
      const Eigen::Vector3d to = all_ports[bone_body][k % 2].centre;
      links.push_back({"bar",
                       {{bone_body, static_cast<Eigen::Index>(6 * (k % 2)), Eigen::MatrixXd::Identity(6, 6)},
                        {0, static_cast<Eigen::Index>(6 * k), -solver::rigid_transfer(from, to).transpose()}},
                       solver::beam_flexibility(section, from, to),
                       Eigen::VectorXd::Zero(6)});
    }
    links.push_back({"support",
                     {{1, 12, Eigen::MatrixXd::Identity(6, 6)}},
                     Eigen::MatrixXd::Zero(6, 6),
                     Eigen::VectorXd::Zero(6)});
  }

  solver::System system() const { return {{&condensed[0], &condensed[1], &condensed[2]}, links}; }

  // Two load cases at the distal end: a skew force with a moment, and another.
  solver::PortLoads loads(const solver::System& system,
                          const Eigen::Matrix3d& turn = Eigen::Matrix3d::Identity()) const {
    solver::PortLoads loads = system.no_loads(2);
    Eigen::Matrix<double, 6, 2> wrench;
    wrench << -73.0, 11.0, 13.0, -29.0, -7.0, 17.0, 310.0, 45.0, -120.0, 260.0, 90.0, -35.0;
    wrench.topRows<3>() = (turn * wrench.topRows<3>()).eval();
    wrench.bottomRows<3>() = (turn * wrench.bottomRows<3>()).eval();
    loads[2].middleRows<6>(12) = wrench;
    return loads;
  }
};

}  // namespace

TEST_CASE("bodies, ports and links give the monolithic answer", "[solver][system]") {
  Miniature model;
  model.links[1].initial << 0.02, -0.01, 0.03, 1e-3, -2e-3, 5e-4;  // a bar put in with a misfit
  const solver::System system = model.system();
  const auto loads = model.loads(system);
  const auto condensed = system.solve(model.all_links, loads);
  const auto whole = tests::solve_monolithic({{&model.bodies[0].stiffness(), &model.ports[0]},
                                              {&model.bodies[1].stiffness(), &model.ports[1]},
                                              {&model.bodies[2].stiffness(), &model.ports[2]}},
                                             model.links, loads);
  for (std::size_t b = 0; b < 3; ++b) {
    const Eigen::MatrixXd displacements =
        model.bodies[b].displacements(model.ports[b], condensed.port_forces[b], condensed.amplitudes[b]);
    CHECK(difference(displacements, whole.displacements[b]) < 1e-8);
    const auto rows = solver::node_stress_rows(model.bodies[b].shell(), {3, 8, 21}, 1.0);
    CHECK(difference(rows * displacements, rows * whole.displacements[b]) < 1e-8);
    CHECK(model.bodies[b].residual(model.ports[b], condensed.port_forces[b], displacements).maxCoeff() < 1e-8);
  }
  for (std::size_t l = 0; l < model.links.size(); ++l)
    CHECK(difference(condensed.link_forces[l], whole.link_forces[l]) < 1e-7);
}

// Two bars that end at one point, which a spring joins to the body: the spring's flexibility is in both and
// between them. So is a third body, massless and rigid, with the spring for a link.
TEST_CASE("a flexibility that two links share stands for a spring behind the point where both end",
          "[solver][system]") {
  Miniature model;
  const solver::Matrix6 spring = [] {
    const Eigen::MatrixXd root = Eigen::MatrixXd::Random(6, 6);
    return solver::Matrix6(1e-4 * (root * root.transpose() + Eigen::MatrixXd::Identity(6, 6)));
  }();
  // Bars 0 and 1 on the same port of the proximal bone, the other one by an arm, both with the spring behind it.
  const solver::Matrix6 arm = solver::rigid_transfer({3.0, 0.0, 5.1}, {11.0, 0.0, 5.1});
  model.links[1].ends[0].column = 0;
  model.links[1].ends[0].transfer = arm.transpose();
  auto with_shared = model.links;
  with_shared[0].flexibility += spring;
  with_shared[1].flexibility += arm * spring * arm.transpose();
  const std::vector<solver::SharedFlexibility> shared{{0, 1, spring * arm.transpose()}};
  const solver::System system({&model.condensed[0], &model.condensed[1], &model.condensed[2]}, with_shared,
                              shared);
  const auto loads = model.loads(system);
  const auto found = system.solve(model.all_links, loads);

  solver::Condensed point;  // rigid, of one port, seen from its own place
  point.compliance = Eigen::MatrixXd::Zero(6, 6);
  point.rigid = Eigen::MatrixXd::Identity(6, 6);
  auto with_point = model.links;
  with_point[0].ends[0].body = with_point[1].ends[0].body = 3;
  with_point.push_back({"spring",
                        {{3, 0, Eigen::MatrixXd::Identity(6, 6)}, {1, 0, -Eigen::MatrixXd::Identity(6, 6)}},
                        spring,
                        Eigen::VectorXd::Zero(6)});
  const solver::System longer({&model.condensed[0], &model.condensed[1], &model.condensed[2], &point}, with_point);
  auto longer_loads = loads;
  longer_loads.push_back(Eigen::MatrixXd::Zero(6, 2));
  auto every_link = model.all_links;
  every_link.push_back(static_cast<int>(with_point.size()) - 1);
  const auto expected = longer.solve(every_link, longer_loads);
  for (std::size_t b = 0; b < 3; ++b) CHECK(difference(found.motions[b], expected.motions[b]) < 1e-9);
  for (std::size_t l = 0; l < model.links.size(); ++l)
    CHECK(difference(found.link_forces[l], expected.link_forces[l]) < 1e-8);
  const auto balance = solver::energy_balance(system, found, loads);
  for (Eigen::Index load = 0; load < 2; ++load) CHECK(balance.stored(load) == Approx(balance.supplied(load)));
  // Without it the two bars would each have a spring of their own.
  const solver::System apart({&model.condensed[0], &model.condensed[1], &model.condensed[2]}, with_shared);
  CHECK(difference(apart.solve(model.all_links, loads).motions[2], expected.motions[2]) > 1e-3);
}

TEST_CASE("leaving a link out is the same as never having had it", "[solver][system]") {
  Miniature model;
  const solver::System all = model.system();
  const auto without = all.solve({0, 2, 3, 4}, model.loads(all));
  model.links.erase(model.links.begin() + 1);
  const solver::System fewer = model.system();
  const auto never = fewer.solve({0, 1, 2, 3}, model.loads(fewer));
  for (std::size_t b = 0; b < 3; ++b) CHECK(difference(without.motions[b], never.motions[b]) < 1e-9);
}

TEST_CASE("every body is in balance and the load's work is stored", "[solver][system]") {
  Miniature model;
  const solver::System system = model.system();
  const auto loads = model.loads(system);
  const auto solution = system.solve(model.all_links, loads);
  CHECK(solver::unbalanced_force(system, solution).maxCoeff() < 1e-9 * 310.0);
  const auto energy = solver::energy_balance(system, solution, loads);
  CHECK(difference(energy.stored, energy.supplied) < 1e-9);
  // The support carries the load: forces in balance, moments about the support's point.
  const Eigen::MatrixXd reaction = solution.link_forces.back();
  const Eigen::Matrix<double, 6, 2> applied = loads[2].middleRows<6>(12);
  CHECK(difference(reaction.topRows<3>(), applied.topRows<3>()) < 1e-9);
  const Eigen::Vector3d arm(52.5 + 11.0, 0.0, 0.0);
  for (int c = 0; c < 2; ++c) {
    const Eigen::Vector3d moment = applied.col(c).tail<3>() + arm.cross(Eigen::Vector3d(applied.col(c).head<3>()));
    CHECK(difference(reaction.col(c).tail<3>(), moment) < 1e-9);
  }
}

TEST_CASE("initial deformations store what they supply", "[solver][system]") {
  Miniature model;
  model.links[2].initial << 0.02, -0.01, 0.03, 1e-3, -2e-3, 5e-4;
  const solver::System system = model.system();
  for (const bool loaded : {false, true}) {
    const auto loads = loaded ? model.loads(system) : system.no_loads(1);
    const auto energy = solver::energy_balance(system, system.solve(model.all_links, loads), loads);
    CHECK(difference(energy.stored, energy.supplied) < 1e-9);
  }
}

TEST_CASE("work is reciprocal between load cases", "[solver][system]") {
  // Betti 1872: the first loads' work on the second's motion equals the reverse.
  const Miniature model;
  const solver::System system = model.system();
  const auto loads = model.loads(system);
  const auto solution = system.solve(model.all_links, loads);
  const Eigen::Matrix2d work = loads[2].transpose() * solution.motions[2];
  CHECK(work(0, 1) == Approx(work(1, 0)).epsilon(1e-9));
}

TEST_CASE("turning and moving the whole model turns and moves its answer", "[solver][system]") {
  const Miniature model;
  const Eigen::Isometry3d motion = Eigen::Translation3d(31.0, -17.0, 8.0) *
                                   Eigen::AngleAxisd(0.83, Eigen::Vector3d(0.3, -0.7, 0.5).normalized());
  const Miniature turned(motion);
  const solver::System system = model.system(), turned_system = turned.system();
  const auto plain = system.solve(model.all_links, model.loads(system));
  const auto moved = turned_system.solve(turned.all_links, turned.loads(turned_system, motion.linear()));
  for (std::size_t b = 0; b < 3; ++b) {
    Eigen::MatrixXd expected = plain.motions[b];
    for (Eigen::Index row = 0; row + 3 <= expected.rows(); row += 3)
      expected.middleRows<3>(row) = (motion.linear() * expected.middleRows<3>(row)).eval();
    CHECK(difference(moved.motions[b], expected) < 1e-9);
  }
  const auto stress = [](const Miniature& m, const solver::Solution& s) {
    return (solver::node_stress_rows(m.bodies[0].shell(), {60, 71, 90}, -1.0) *
            m.bodies[0].displacements(m.ports[0], s.port_forces[0], s.amplitudes[0]))
        .eval();
  };
  CHECK(difference(stress(turned, moved), stress(model, plain)) < 1e-9);
}

TEST_CASE("the order of links does not matter", "[solver][system]") {
  const Miniature model;
  const solver::System system = model.system();
  const auto loads = model.loads(system);
  const auto one = system.solve({0, 1, 2, 3, 4}, loads);
  const auto other = system.solve({4, 2, 0, 3, 1}, loads);
  for (std::size_t b = 0; b < 3; ++b) CHECK(difference(one.motions[b], other.motions[b]) < 1e-9);
}

TEST_CASE("a body that nothing holds is named", "[solver][system]") {
  const Miniature model;
  const solver::System system = model.system();
  try {
    static_cast<void>(system.solve({0, 1, 4}, model.loads(system)));
    FAIL("a free distal body must not be solved");
  } catch (const solver::MechanismError& error) {
    CHECK(error.body == 2);
    CHECK(error.motion.cwiseAbs().maxCoeff() == Approx(1.0));
  }
}

}  // namespace gapstrain
