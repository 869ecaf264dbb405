#include "solver/motion/large_motion.h"

#include "solver/motion/mixing.h"
#include "solver/motion/rotation.h"

#include <Eigen/QR>

#include <algorithm>
#include <cmath>
#include <utility>

namespace gapstrain::solver {

namespace {

// The point through which forces act with these moments, nearest to where those are about: least squares.
Eigen::Vector3d point_of(const Eigen::Matrix3Xd& lines, const Eigen::Matrix3Xd& moments) {
  Eigen::MatrixXd levers = Eigen::MatrixXd::Zero(3 * lines.cols(), 3);
  Eigen::VectorXd right = Eigen::VectorXd::Zero(levers.rows());
  for (Eigen::Index k = 0; k < lines.cols(); ++k) {
    if (lines.col(k).isZero(0.0)) continue;
    levers.middleRows<3>(3 * k) = -cross_matrix(lines.col(k));  // moment = point x line
    right.segment<3>(3 * k) = moments.col(k);
  }
  return levers.completeOrthogonalDecomposition().solve(right);
}

std::vector<Eigen::VectorXd> difference(const std::vector<Eigen::VectorXd>& after,
                                        const std::vector<Eigen::VectorXd>& before) {
  std::vector<Eigen::VectorXd> change;
  for (std::size_t b = 0; b < after.size(); ++b) change.emplace_back(after[b] - before[b]);
  return change;
}

}  // namespace

TurningSystem::TurningSystem(const System& system, std::vector<TurningBody> bodies)
    : system_(system), bodies_(std::move(bodies)) {
  for (std::size_t l = 0; l < system.links().size(); ++l) {
    const Link& link = system.links()[l];
    TurningLink turning{system.first_row(static_cast<int>(l)), link.size(), {}, std::nullopt};
    for (const auto& end : link.ends)
      if (auto own = end_of(end)) turning.ends.push_back(std::move(*own));
    if (turning.ends.size() < link.ends.size()) continue;  // strains of one port
    if (turning.ends.size() > 1) {
      turning.seen_from = turning.ends.back();
      turning.ends.pop_back();
    }
    links_.push_back(std::move(turning));
  }
}

std::optional<TurningSystem::End> TurningSystem::end_of(const LinkEnd& end) const {
  const auto& ports = bodies_[end.body].ports;
  const auto port =
      std::find_if(ports.begin(), ports.end(), [&](const TurningPort& one) { return one.column == end.column; });
  if (port == ports.end()) return std::nullopt;
  End own{end.body, static_cast<std::size_t>(port - ports.begin()), end.transfer.topRows<3>(),
          Eigen::Matrix3Xd::Zero(3, end.transfer.cols()), Eigen::Vector3d::Zero()};
  if (end.transfer.rows() < 6) return own;
  own.moments = end.transfer.middleRows<3>(3);
  own.point = point_of(own.lines, own.moments);
  for (Eigen::Index k = 0; k < own.lines.cols(); ++k) own.moments.col(k) -= own.point.cross(own.lines.col(k));
  return own;
}

PlacedBodies TurningSystem::place(const std::vector<Eigen::VectorXd>& motions) const {
  PlacedBodies placed;
  for (std::size_t b = 0; b < bodies_.size(); ++b) {
    placed.nodes.push_back(place_nodes(bodies_[b], motions[b]));
    placed.ports.push_back(place_ports(bodies_[b], placed.nodes.back(), motions[b]));
  }
  return placed;
}

TurningSystem::Seen TurningSystem::see(const TurningLink& link, const End& end, const PlacedBodies& placed) const {
  const Placed& port = placed.ports[end.body][end.port];
  const Eigen::Vector3d& was = bodies_[end.body].ports[end.port].place;
  Seen seen;
  seen.point = port.place + port.frame * end.point;
  if (link.seen_from) {
    const Eigen::Vector3d& from = bodies_[link.seen_from->body].ports[link.seen_from->port].place;
    seen.from = placed.ports[link.seen_from->body][link.seen_from->port];
    seen.shift = seen.from.frame.transpose() * (seen.point - seen.from.place) - (was + end.point - from);
  } else {
    seen.from = {Eigen::Vector3d::Zero(), Eigen::Matrix3d::Identity()};
    seen.shift = seen.point - (was + end.point);
  }
  seen.turn = end.moments.isZero(0.0) ? Eigen::Vector3d(Eigen::Vector3d::Zero())
                                      : turn_of(seen.from.frame.transpose() * port.frame);
  return seen;
}

Eigen::VectorXd TurningSystem::deformations(const PlacedBodies& placed,
                                            const std::vector<Eigen::VectorXd>& motions) const {
  Eigen::VectorXd deformations = Eigen::VectorXd::Zero(system_.rows());
  for (std::size_t l = 0; l < system_.links().size(); ++l)  // strains; of others written over below
    for (const auto& end : system_.links()[l].ends)
      deformations.segment(system_.first_row(static_cast<int>(l)), end.transfer.cols()) +=
          end.transfer.transpose() * motions[end.body].segment(end.column, end.transfer.rows());
  for (const auto& link : links_) {
    auto rows = deformations.segment(link.first, link.size);
    rows.setZero();
    for (const auto& end : link.ends) {
      const Seen seen = see(link, end, placed);
      rows += end.lines.transpose() * seen.shift + end.moments.transpose() * seen.turn;
    }
  }
  return deformations;
}

PortLoads TurningSystem::port_forces(const PlacedBodies& placed, const std::vector<Eigen::VectorXd>& motions,
                                     const Eigen::VectorXd& forces, const PortLoads& loads,
                                     const std::vector<TurningArm>& arms) const {
  using Wrenches = Eigen::Matrix<double, 6, Eigen::Dynamic>;
  std::vector<Wrenches> wrenches;
  for (std::size_t b = 0; b < bodies_.size(); ++b) {
    Wrenches& of_body =
        wrenches.emplace_back(Wrenches::Zero(6, static_cast<Eigen::Index>(bodies_[b].ports.size())));
    for (std::size_t p = 0; p < bodies_[b].ports.size(); ++p) {
      const TurningPort& port = bodies_[b].ports[p];
      const Eigen::Index size = port.has_turns ? 6 : 3;
      of_body.col(static_cast<Eigen::Index>(p)).head(size) = loads[b].col(0).segment(port.column, size);
      for (const auto& arm : arms)
        if (arm.body == b && arm.column == port.column) {
          const Eigen::Vector3d force = loads[b].col(0).segment<3>(port.column);
          of_body.col(static_cast<Eigen::Index>(p)).tail<3>() +=
              (placed.ports[b][p].frame * arm.arm - arm.arm).cross(force);
        }
    }
  }
  const auto push = [&](const End& end, const Eigen::Vector3d& at, const Eigen::Vector3d& force,
                        const Eigen::Vector3d& moment) {
    auto wrench = wrenches[end.body].col(static_cast<Eigen::Index>(end.port));
    wrench.head<3>() += force;
    wrench.tail<3>() += moment + (at - placed.ports[end.body][end.port].place).cross(force);
  };
  for (const auto& link : links_) {
    const auto own = forces.segment(link.first, link.size);
    if (own.isZero(0.0)) continue;
    for (const auto& end : link.ends) {
      const Seen seen = see(link, end, placed);
      const Eigen::Vector3d force = -(seen.from.frame * (end.lines * own));
      const Eigen::Vector3d moment =
          -(seen.from.frame * (turn_of_spin(seen.turn).transpose() * (end.moments * own)));
      push(end, seen.point, force, moment);
      if (link.seen_from) push(*link.seen_from, seen.point, -force, -moment);
    }
  }
  PortLoads all = system_.port_forces(forces, loads);
  for (std::size_t b = 0; b < bodies_.size(); ++b) {
    const Eigen::VectorXd pulled =
        pull_back(bodies_[b], placed.nodes[b], placed.ports[b], motions[b], wrenches[b]);
    std::vector<char> is_strain(static_cast<std::size_t>(pulled.size()), 1);
    for (const auto& port : bodies_[b].ports)
      std::fill_n(is_strain.begin() + port.column, port.has_turns ? 6 : 3, char{0});
    for (Eigen::Index k = 0; k < pulled.size(); ++k)
      if (is_strain[static_cast<std::size_t>(k)] == 0) all[b](k, 0) = pulled(k);
  }
  return all;
}

namespace {

// Added forces and initial deformations as one vector: lengths over the bodies' size, forces over the largest.
class Scale {
 public:
  Scale(const TurningSystem& turning, const PortLoads& load, const MovedState& made) : turning_(turning) {
    Eigen::Vector3d low = Eigen::Vector3d::Constant(1e300), high = -low;
    for (const auto& body : turning.bodies())
      for (const auto& port : body.ports) {
        low = low.cwiseMin(port.place);
        high = high.cwiseMax(port.place);
      }
    length_ = std::max((high - low).norm(), 1e-9);
    for (const auto& forces : turning.system().port_forces(made.forces, load))
      force_ = std::max(force_, forces.cwiseAbs().maxCoeff());
    for (std::size_t b = 0; b < turning.bodies().size(); ++b) {
      Eigen::VectorXd units = Eigen::VectorXd::Constant(load[b].rows(), force_);
      for (const auto& port : turning.bodies()[b].ports)
        if (port.has_turns) units.segment<3>(port.column + 3).setConstant(force_ * length_);
      units_.push_back(std::move(units));
    }
    rows_ = Eigen::VectorXd::Constant(turning.system().rows(), length_);
    for (std::size_t l = 0; l < turning.system().links().size(); ++l)
      for (const auto& end : turning.system().links()[l].ends)
        for (Eigen::Index k = 0; k < end.transfer.cols(); ++k)
          if (end.transfer.topRows(std::min<Eigen::Index>(3, end.transfer.rows())).col(k).isZero(0.0))
            rows_(turning.system().first_row(static_cast<int>(l)) + k) = 1.0;
  }

  Eigen::VectorXd join(const PortLoads& forces, const Eigen::VectorXd& initial) const {
    Eigen::VectorXd all(size());
    Eigen::Index first = 0;
    for (std::size_t b = 0; b < units_.size(); ++b) {
      all.segment(first, units_[b].size()) = forces[b].col(0).cwiseQuotient(units_[b]);
      first += units_[b].size();
    }
    all.tail(rows_.size()) = initial.cwiseQuotient(rows_);
    return all;
  }
  PortLoads forces(const Eigen::VectorXd& all) const {
    PortLoads forces;
    Eigen::Index first = 0;
    for (const auto& units : units_) {
      forces.emplace_back(all.segment(first, units.size()).cwiseProduct(units));
      first += units.size();
    }
    return forces;
  }
  Eigen::VectorXd initial(const Eigen::VectorXd& all) const { return all.tail(rows_.size()).cwiseProduct(rows_); }
  Eigen::Index size() const {
    Eigen::Index count = rows_.size();
    for (const auto& units : units_) count += units.size();
    return count;
  }

 private:
  const TurningSystem& turning_;
  double length_ = 1.0, force_ = 1e-300;
  std::vector<Eigen::VectorXd> units_;
  Eigen::VectorXd rows_;
};

}  // namespace

LargeMotion find_large_motion(
    const TurningSystem& turning, const MovedState& made, const PortLoads& load,
    const std::vector<TurningArm>& arms, int steps,
    const std::function<MovedState(double, const PortLoads&, const Eigen::VectorXd&)>& solve) {
  constexpr int most_rounds = 80, most_idle = 12;
  constexpr double on_the_way = 1e-3, settled = 1e-11, acceptable = 1e-8, rounding = 1e-14;
  const System& system = turning.system();
  const Scale scale(turning, load, made);
  PlacedBodies placed;
  std::vector<Eigen::VectorXd> motions;
  // What the linear law lacks of the law at its answer.
  const auto lacking = [&](const MovedState& state, const PortLoads& share) {
    motions = difference(state.motions, made.motions);
    placed = turning.place(motions);
    PortLoads forces = turning.port_forces(placed, motions, state.forces, share, arms);
    const PortLoads linear = system.port_forces(state.forces, share);
    for (std::size_t b = 0; b < forces.size(); ++b) forces[b] -= linear[b];
    Eigen::VectorXd initial = -turning.deformations(placed, motions);
    for (std::size_t l = 0; l < system.links().size(); ++l)
      for (const auto& end : system.links()[l].ends)
        initial.segment(system.first_row(static_cast<int>(l)), end.transfer.cols()) +=
            end.transfer.transpose() * motions[end.body].segment(end.column, end.transfer.rows());
    return scale.join(forces, initial);
  };

  LargeMotion found;
  Eigen::VectorXd before, x = Eigen::VectorXd::Zero(scale.size());
  for (int step = 1; step <= steps; ++step) {
    const double share = static_cast<double>(step) / steps;
    PortLoads part = load;
    for (auto& forces : part) forces *= share;
    const Eigen::VectorXd last = x;
    if (before.size() > 0) x += x - before;
    before = last;
    Mixing mixing(30);
    double best = 1e300;
    int idle = 0;
    found.settled = false;
    for (int round = 0; round < most_rounds; ++round) {
      const MovedState state = solve(share, scale.forces(x), scale.initial(x));
      const Eigen::VectorXd value = lacking(state, part);
      ++found.rounds;
      const double residual = (value - x).norm(), size = std::max(value.norm(), rounding);
      found.residual = residual / size;
      if (!std::isfinite(found.residual)) return found;
      idle = found.residual < 0.5 * best ? 0 : idle + 1;
      best = std::min(best, found.residual);
      const double limit = step < steps ? on_the_way : settled;
      if (found.residual <= limit || residual <= rounding ||
          (idle >= most_idle && found.residual <= std::max(limit, acceptable))) {
        found.settled = true;
        break;
      }
      x = mixing.next(x, value);
    }
    if (!found.settled) return found;
  }
  found.forces = scale.forces(x);
  found.initial = scale.initial(x);
  found.nodes = placed.nodes;
  for (std::size_t b = 0; b < placed.nodes.size(); ++b) {
    found.turn = std::max(found.turn, largest_turn(placed.nodes[b]));
    found.turn_within =
        std::max(found.turn_within, largest_turn_within(turning.bodies()[b], placed.nodes[b], motions[b]));
  }
  return found;
}

}  // namespace gapstrain::solver
