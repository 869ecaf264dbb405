#include "solver/bodies/yielding.h"

#include "solver/bodies/plastic_flow.h"
#include "solver/elements/beam.h"

#include <catch2/catch.hpp>

#include <Eigen/Geometry>

#include <cmath>
#include <random>

using namespace gapstrain;
using solver::Resultants;

namespace {

constexpr double length = 100.0, diameter = 4.0, youngs_modulus = 190000.0, yield = 800.0;

// A straight bar along x, built in at its first end: equal pieces, each a link between points that are rigid
// bodies, with sections that yield at both ends of each.
class Bar {
 public:
  explicit Bar(int pieces, double slope = 1e-9) : pieces_(pieces) {
    point_.compliance = Eigen::MatrixXd::Zero(6, 6);
    point_.rigid = Eigen::MatrixXd::Identity(6, 6);
    section_ = solver::solid_circle(diameter, youngs_modulus, 0.3);
    section_.shear = 1e15;
    const double area = M_PI * diameter * diameter / 4.0, torsion = M_PI * std::pow(diameter, 3) / 12.0;
    full_ << yield * area, 1e12, 1e12, yield / std::sqrt(3.0) * torsion, plastic_moment(), plastic_moment();
    std::vector<solver::Link> links;
    for (int k = 0; k < pieces; ++k) {
      const Eigen::Vector3d from(length * k / pieces, 0.0, 0.0), to(length * (k + 1) / pieces, 0.0, 0.0);
      solver::Link link{"piece", {}, solver::beam_flexibility(section_, from, to), Eigen::VectorXd::Zero(6)};
      link.ends.push_back({static_cast<std::size_t>(k), 0, Eigen::MatrixXd::Identity(6, 6)});
      if (k > 0)
        link.ends.push_back({static_cast<std::size_t>(k - 1), 0, -solver::rigid_transfer(from, to).transpose()});
      links.push_back(link);
      links_.push_back(k);
    }
    // A roller under the far end, across z; the points give nothing, so it must give a little.
    links.push_back({"roller",
                     {{static_cast<std::size_t>(pieces - 1), 2, Eigen::MatrixXd::Identity(1, 1)}},
                     Eigen::MatrixXd::Constant(1, 1, 1e-9),
                     Eigen::VectorXd::Zero(1)});
    system_ = std::make_unique<solver::System>(
        std::vector<const solver::Condensed*>(static_cast<std::size_t>(pieces), &point_), links);
    for (int k = 0; k < pieces; ++k)
      for (const double place : {0.0, length / pieces}) {
        solver::YieldSection section;
        for (int row = 0; row < 6; ++row) section.rows.push_back(6 * k + row);
        section.of_forces = -solver::rigid_transfer({place, 0.0, 0.0}, {length / pieces, 0.0, 0.0}).transpose();
        section.full = full_;
        section.curve.slope = slope;
        sections.push_back(section);
      }
    now = solver::Yielded::none(sections.size());
    setting.links = links_;
    setting.initial = Eigen::VectorXd::Zero(system_->rows());
    setting.hands.at = Eigen::VectorXd::Zero(6 * pieces);
  }

  static double plastic_moment() { return yield * std::pow(diameter, 3) / 6.0; }
  double bending() const { return section_.bending; }
  int roller() const { return pieces_; }
  const solver::System& system() const { return *system_; }

  // Deflection along z of the end of a piece.
  double deflection(int piece) const {
    return state.pressed.solution.motions[static_cast<std::size_t>(piece)](2, 0);
  }

  void load(int piece, const Eigen::Matrix<double, 6, 1>& force) {
    auto loads = system_->no_loads(1);
    loads[static_cast<std::size_t>(piece)].col(0) = force;
    state = solver::press_yielding(*system_, {}, sections, setting, loads, now);
    setting.initial = state.pressed.initial;
    now = state.yielded;
    CHECK(state.residual < 1e-6);
  }

  std::vector<solver::YieldSection> sections;
  solver::Setting setting;
  solver::Yielded now;
  solver::YieldedState state;

 private:
  int pieces_;
  solver::Condensed point_;
  solver::BeamSection section_;
  Resultants full_;
  std::vector<int> links_;
  std::unique_ptr<solver::System> system_;
};

Eigen::Matrix<double, 6, 1> along_z(double force) { return force * Eigen::Matrix<double, 6, 1>::Unit(2); }

}  // namespace

// Elastic to 16/3 Mp / L, then a hinge at the built-in end and a simple beam, and a mechanism at 6 Mp / L
// (beam theory).
TEST_CASE("a propped bar under a force in its middle yields at its end, then in its middle", "[solver][yield]") {
  Bar bar(2);
  bar.setting.links.push_back(bar.roller());
  const double moment = Bar::plastic_moment(), cube = std::pow(length, 3);
  const double first = 16.0 / 3.0 * moment / length, last = 6.0 * moment / length;
  const auto elastic = [&](double force) { return 7.0 * force * cube / (768.0 * bar.bending()); };

  bar.load(0, along_z(0.999 * first));
  CHECK(bar.now.flow.isZero(0.0));
  CHECK(bar.deflection(0) == Approx(elastic(0.999 * first)).epsilon(1e-6));

  const double loaded = 0.999 * last;
  bar.load(0, along_z(loaded));
  const double with_hinge = elastic(first) + (loaded - first) * cube / (48.0 * bar.bending());
  CHECK(bar.deflection(0) == Approx(with_hinge).epsilon(1e-3));
  CHECK(bar.now.flow(0) > 0.0);
  CHECK(bar.now.flow.tail(3).isZero(0.0));

  SECTION("unloading is elastic and leaves what has bent") {
    bar.load(0, along_z(0.0));
    CHECK(bar.deflection(0) == Approx(with_hinge - elastic(loaded)).epsilon(2e-3));
    const Eigen::MatrixXd bent = bar.now.deformed;
    bar.load(0, along_z(loaded));
    CHECK(bar.deflection(0) == Approx(with_hinge).epsilon(1e-3));
    CHECK((bar.now.deformed - bent).norm() < 1e-6 * bent.norm());
  }
  SECTION("beyond the limit load it moves without end") {
    bar.load(0, along_z(1.001 * last));
    CHECK(std::abs(bar.deflection(0)) > 100.0 * with_hinge);
  }
}

TEST_CASE("a bar that hardens springs back by its elastic deflection", "[solver][yield]") {
  Bar bar(1, 1e-3);
  const double moment = Bar::plastic_moment(), force = 1.3 * moment / length;
  bar.load(0, along_z(force));
  const double elastic = force * std::pow(length, 3) / (3.0 * bar.bending());
  const double turn = 0.3 / 1e-3 / moment;  // 1 + slope * moment * turn = 1.3
  CHECK(bar.deflection(0) == Approx(elastic + turn * length).epsilon(1e-3));
  bar.load(0, along_z(0.0));
  CHECK(bar.deflection(0) == Approx(turn * length).epsilon(1e-3));
}

TEST_CASE("work is stored or dissipated in every step, and dissipation is never negative", "[solver][yield]") {
  Bar bar(3, 1e-4);
  bar.setting.links.push_back(bar.roller());
  const double top = 7.0 * Bar::plastic_moment() / length;
  Eigen::Matrix<double, 6, 1> before = along_z(0.0);
  bar.load(1, before);
  double dissipated_in_all = 0.0;
  for (const double share : {0.5, 0.9, 1.0, 0.6, 0.0, -0.5, -1.0, 0.0}) {
    const solver::YieldedState old = bar.state;
    const Eigen::Matrix<double, 6, 1> force =
        share * (along_z(top) + 2.0 * Eigen::Matrix<double, 6, 1>::Unit(3) * top);
    bar.load(1, force);
    const auto stored = [&](const solver::PressedState& state) {
      double energy = 0.0;
      for (std::size_t l = 0; l < state.solution.links.size(); ++l) {
        const auto& forces = state.solution.link_forces[l].col(0);
        energy +=
            0.5 * forces.dot(bar.system().links()[static_cast<std::size_t>(state.solution.links[l])].flexibility *
                             forces);
      }
      return energy;
    };
    double dissipated = 0.0;
    for (std::size_t k = 0; k < bar.sections.size(); ++k) {
      const auto column = static_cast<Eigen::Index>(k);
      const Eigen::VectorXd bent = bar.now.deformed.col(column) - old.yielded.deformed.col(column);
      const Resultants mean = 0.5 * (bar.sections[k].resultants(bar.state.pressed.forces) +
                                     bar.sections[k].resultants(old.pressed.forces));
      dissipated += mean.dot(bent);
      CHECK(bar.sections[k].resultants(bar.state.pressed.forces).dot(bent) >= 0.0);
    }
    const double work =
        0.5 * (before + force)
                  .dot(bar.state.pressed.solution.motions[1].col(0) - old.pressed.solution.motions[1].col(0));
    INFO(share);
    CHECK(work == Approx(stored(bar.state.pressed) - stored(old.pressed) + dissipated).margin(1e-6 * top));
    dissipated_in_all += dissipated;
    before = force;
  }
  CHECK(dissipated_in_all > 0.0);
}

// The answer is unique, so it must satisfy the law whatever the matrix: yield held, flow along the gradient.
TEST_CASE("flow of many coupled sections keeps yield and normality", "[solver][yield]") {
  std::mt19937 random(7);
  std::normal_distribution<double> normal;
  for (int trial = 0; trial < 40; ++trial) {
    const int count = 1 + trial % 12, rank = 2 + 2 * count;
    std::vector<solver::YieldSection> sections(static_cast<std::size_t>(count));
    solver::FlowProblem problem;
    for (auto& section : sections) {
      section.curve = {{0.0, 0.2, 1.0}, {0.6, 0.9, 1.0}, 0.01};
      problem.sections.push_back(&section);
    }
    Eigen::MatrixXd half = Eigen::MatrixXd::NullaryExpr(6 * count, rank, [&] { return normal(random); });
    problem.compliance = half * half.transpose();
    problem.shares = Eigen::VectorXd::NullaryExpr(6 * count, [&] { return 1.5 * normal(random); });
    problem.flow_before = Eigen::VectorXd::Zero(count);
    const auto answer = solver::find_flow(problem);
    INFO(trial);
    CHECK(answer.residual < 1e-8);
    CHECK((problem.shares - problem.compliance * answer.deformation - answer.shares).norm() < 1e-8);
    for (int k = 0; k < count; ++k) {
      const auto asked = solver::demand(answer.shares.segment<6>(6 * k));
      CHECK(answer.flow(k) >= 0.0);
      CHECK((answer.deformation.segment<6>(6 * k) - answer.flow(k) * asked.gradient).norm() < 1e-6);
    }
  }
}
