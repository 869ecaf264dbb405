// Two tubes pressed together at their edges, with what holds them: for tests of contact and of what yields beside
// it.
#pragma once

#include "solver/bodies/pressed.h"
#include "solver/elements/beam.h"
#include "tests/solver/bodies/monolithic.h"
#include "tests/solver/bodies/tubes_in_line.h"

#include <array>
#include <vector>

namespace gapstrain::tests {

using Wrench = Eigen::Matrix<double, 6, 1>;

// Two tubes of different wall and stiffness with a joint between them: the first one's far end held, the second
// one's far end on springs, both ends tied together by a bar beside the tubes.
class Joint {
 public:
  static constexpr int support = 0, springs = 1, tie = 2;

  explicit Joint(double poissons_ratio = 0.31) {
    tubes_.push_back(make_tube(5.1, 1.7, -14.0, 14.0, solver::isotropic_shell(15500.0, poissons_ratio), 1));
    tubes_.push_back(make_tube(5.1, 1.3, 0.0, 18.5, solver::isotropic_shell(11900.0, poissons_ratio), 0));
    const Eigen::MatrixXd same = Eigen::MatrixXd::Identity(6, 6);
    const Wrench springs_give = (Wrench() << 3e-4, 5e-5, 4e-5, 3e-6, 2e-6, 4e-6).finished();
    const Eigen::Vector3d from(-14.0, 2.0, 9.0), to(18.5, 2.0, 9.0);
    const auto bar = solver::solid_circle(0.8, 186000.0, 0.3);
    const auto carried = [&](double x, const Eigen::Vector3d& place) -> Eigen::MatrixXd {
      return solver::rigid_transfer({x, 0.0, 0.0}, place).transpose();
    };
    links_ = {{"support", {at_ring(0, 0, same)}, Eigen::MatrixXd::Zero(6, 6), Eigen::VectorXd::Zero(6)},
              {"springs", {at_ring(1, 1, same)}, springs_give.asDiagonal(), Eigen::VectorXd::Zero(6)},
              {"tie",
               {at_ring(1, 1, carried(18.5, to)), at_ring(0, 0, -carried(-14.0, to))},
               solver::beam_flexibility(bar, from, to),
               Eigen::VectorXd::Zero(6)}};
    pairs = add_pairs(links_, 0, 1, Eigen::Vector3d::UnitX(), {1e-6, 2e-6, 0.0});
  }

  solver::System system() const { return {{&tubes_[0].condensed, &tubes_[1].condensed}, links_}; }

  std::vector<MonolithicBody> whole_bodies() const {
    return {{&tubes_[0].body.stiffness(), &tubes_[0].ports}, {&tubes_[1].body.stiffness(), &tubes_[1].ports}};
  }
  const std::vector<Tube>& tubes() const { return tubes_; }

  std::vector<solver::ContactPair> pairs;

 private:
  std::vector<Tube> tubes_;
  std::vector<solver::Link> links_;
};

inline solver::PortLoads at_far_end(const solver::System& system, const Wrench& wrench) {
  auto loads = system.no_loads(1);
  loads[1].middleRows<6>(Tube::ring(1)) = wrench;
  return loads;
}

// Presses off the middle, with some shear and torsion.
inline const Wrench skew = (Wrench() << -310.0, 23.0, -11.0, 90.0, 5720.0, -4310.0).finished();

// All of the joint in place; every fourth pair is smooth, the others rub more or less.
inline solver::Setting mixed_setting(const Joint& joint, const solver::System& system) {
  auto setting = setting_of(system, joint.pairs, {Joint::support, Joint::springs, Joint::tie}, 0.0);
  for (Eigen::Index pair = 0; pair < setting.friction.size(); ++pair)
    setting.friction(pair) = std::array{0.3, 0.9, 0.0, 2.5}[static_cast<std::size_t>(pair % 4)];
  return setting;
}

}  // namespace gapstrain::tests
