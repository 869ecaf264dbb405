#include "solver/motion/turning_body.h"

#include "solver/motion/rotation.h"

#include <Eigen/Cholesky>

#include <algorithm>
#include <cassert>

namespace gapstrain::solver {

namespace {

// What the linear law says of the way from a node to the next one.
struct Way {
  Way(const PlacedNode& from, const Eigen::Vector3d& to, const Vector6& moved)
      : straight(to - from.from), turn(moved.tail<3>() - from.linear.tail<3>()) {
    length = straight.norm();
    along = straight / length;
    strain =
        moved.head<3>() - from.linear.head<3>() - 0.5 * (from.linear.tail<3>() + moved.tail<3>()).cross(straight);
    across = strain - strain.dot(along) * along;
    bend = turn - turn.dot(along) * along;
    // Mean of half the square of the slopes: of the chord in the middle frame, of the cubic against its chord
    // (axial_slopes.cpp has the two).
    const double shorter =
        0.5 * (1.2 * across.squaredNorm() / (length * length) + bend.squaredNorm() / 12.0) * length;
    way = straight + strain - shorter * along;
  }

  // Forces on strain and turn of one on the way in the middle frame.
  Eigen::Vector3d on_strain(const Eigen::Vector3d& force) const {
    return force - force.dot(along) * 1.2 / length * across;
  }
  Eigen::Vector3d on_turn(const Eigen::Vector3d& force) const { return -force.dot(along) * length / 12.0 * bend; }

  Eigen::Vector3d straight, turn, along, strain, across, bend, way;
  double length = 0.0;
};

// How a point of a node's frame is strained out of its place there.
Eigen::Vector3d strained(const PlacedNode& node, const Eigen::Vector3d& place, const Eigen::Vector3d& shift) {
  return shift - node.linear.head<3>() - node.linear.tail<3>().cross(place - node.from);
}

}  // namespace

PlacedBody place_nodes(const TurningBody& body, const Eigen::VectorXd& motions) {
  PlacedBody placed;
  for (const auto& node : body.nodes) {
    PlacedNode now;
    now.from = node.place;
    now.linear = node.reading * motions;
    if (node.before < 0) {
      now.place = node.place + now.linear.head<3>();
      now.frame = rotation_by(now.linear.tail<3>());
    } else {
      const PlacedNode& before = placed[static_cast<std::size_t>(node.before)];
      const Way way(before, node.place, now.linear);
      now.place = before.place + before.frame * (rotation_by(0.5 * way.turn) * way.way);
      now.frame = before.frame * rotation_by(way.turn);
    }
    placed.push_back(now);
  }
  return placed;
}

std::vector<Placed> place_ports(const TurningBody& body, const PlacedBody& nodes, const Eigen::VectorXd& motions) {
  std::vector<Placed> placed;
  for (const auto& port : body.ports) {
    const PlacedNode& node = nodes[port.node];
    Placed now;
    now.place = node.place + node.frame * (port.place - node.from +
                                           strained(node, port.place, motions.segment<3>(port.column)));
    now.frame = port.has_turns ? Eigen::Matrix3d(node.frame * rotation_by(motions.segment<3>(port.column + 3) -
                                                                          node.linear.tail<3>()))
                               : node.frame;
    placed.push_back(now);
  }
  return placed;
}

Eigen::VectorXd pull_back(const TurningBody& body, const PlacedBody& nodes, const std::vector<Placed>& ports,
                          const Eigen::VectorXd& motions,
                          const Eigen::Matrix<double, 6, Eigen::Dynamic>& wrenches) {
  Eigen::VectorXd forces = Eigen::VectorXd::Zero(motions.size());
  Eigen::Matrix<double, 6, Eigen::Dynamic> in_space, linear;  // on nodes where they are, and on their readings
  in_space.setZero(6, static_cast<Eigen::Index>(nodes.size()));
  linear = in_space;
  for (std::size_t p = 0; p < ports.size(); ++p) {
    const TurningPort& port = body.ports[p];
    const auto n = static_cast<Eigen::Index>(port.node);
    const PlacedNode& node = nodes[port.node];
    const Eigen::Vector3d force = wrenches.col(static_cast<Eigen::Index>(p)).head<3>(),
                          moment = wrenches.col(static_cast<Eigen::Index>(p)).tail<3>();
    in_space.col(n).head<3>() += force;
    in_space.col(n).tail<3>() += moment + (ports[p].place - node.place).cross(force);
    const Eigen::Vector3d own = node.frame.transpose() * force;
    forces.segment<3>(port.column) += own;
    linear.col(n).head<3>() -= own;
    linear.col(n).tail<3>() -= (port.place - node.from).cross(own);
    if (!port.has_turns) continue;
    const Eigen::Vector3d turn = motions.segment<3>(port.column + 3) - node.linear.tail<3>();
    const Eigen::Vector3d own_moment = spin_of_turn(turn).transpose() * (node.frame.transpose() * moment);
    forces.segment<3>(port.column + 3) += own_moment;
    linear.col(n).tail<3>() -= own_moment;
  }
  for (std::size_t k = nodes.size(); k-- > 0;) {
    const auto n = static_cast<Eigen::Index>(k);
    const Eigen::Vector3d force = in_space.col(n).head<3>(), moment = in_space.col(n).tail<3>();
    if (body.nodes[k].before < 0) {
      linear.col(n).head<3>() += force;
      linear.col(n).tail<3>() += spin_of_turn(nodes[k].linear.tail<3>()).transpose() * moment;
      continue;
    }
    const auto b = static_cast<Eigen::Index>(body.nodes[k].before);
    const PlacedNode& before = nodes[static_cast<std::size_t>(b)];
    const Way way(before, nodes[k].from, nodes[k].linear);
    const Eigen::Vector3d about = (nodes[k].place - before.place).cross(force);
    in_space.col(b).head<3>() += force;
    in_space.col(b).tail<3>() += moment + about;
    const Eigen::Vector3d in_middle = rotation_by(0.5 * way.turn).transpose() * (before.frame.transpose() * force);
    const Eigen::Vector3d on_strain = way.on_strain(in_middle);
    const Eigen::Vector3d on_turn =
        0.5 * spin_of_turn(0.5 * way.turn).transpose() * (before.frame.transpose() * about) +
        spin_of_turn(way.turn).transpose() * (before.frame.transpose() * moment) + way.on_turn(in_middle);
    const Eigen::Vector3d of_strain = 0.5 * way.straight.cross(on_strain);
    linear.col(n).head<3>() += on_strain;
    linear.col(b).head<3>() -= on_strain;
    linear.col(n).tail<3>() += on_turn - of_strain;
    linear.col(b).tail<3>() -= on_turn + of_strain;
  }
  for (std::size_t k = 0; k < nodes.size(); ++k)
    forces += body.nodes[k].reading.transpose() * linear.col(static_cast<Eigen::Index>(k));
  return forces;
}

double largest_turn(const PlacedBody& nodes) {
  double largest = 0.0;
  for (const auto& node : nodes) largest = std::max(largest, turn_of(node.frame).norm());
  return largest;
}

double largest_turn_within(const TurningBody& body, const PlacedBody& nodes, const Eigen::VectorXd& motions) {
  double largest = 0.0;
  for (std::size_t k = 0; k < nodes.size(); ++k)
    if (const int before = body.nodes[k].before; before >= 0) {
      const Vector6 change = nodes[k].linear - nodes[static_cast<std::size_t>(before)].linear;
      largest = std::max(largest, 0.5 * change.tail<3>().norm());
    }
  for (const auto& port : body.ports)
    if (port.has_turns)
      largest =
          std::max(largest, (motions.segment<3>(port.column + 3) - nodes[port.node].linear.tail<3>()).norm());
  return largest;
}

Placed place_point(const PlacedBody& nodes, const Eigen::Vector3d& point, const Eigen::Vector3d& shift) {
  const auto in_frame = [&](const PlacedNode& node) -> Eigen::Vector3d {
    return node.place + node.frame * (point - node.from + strained(node, point, shift));
  };
  const auto distance = [&](const PlacedNode& node) { return (node.from - point).squaredNorm(); };
  const auto nearest = std::min_element(nodes.begin(), nodes.end(), [&](const PlacedNode& a, const PlacedNode& b) {
    return distance(a) < distance(b);
  });
  Placed placed{in_frame(*nearest), nearest->frame};
  // The other one of the two that it lies between.
  double share = 0.0;
  const PlacedNode* other = nullptr;
  for (const auto& node : nodes) {
    if (&node == &*nearest) continue;
    const Eigen::Vector3d way = node.from - nearest->from;
    const double at = (point - nearest->from).dot(way) / way.squaredNorm();
    if (at > share && at < 1.0) {
      share = at;
      other = &node;
    }
  }
  if (other) {
    placed.place += share * (in_frame(*other) - placed.place);
    placed.frame *= rotation_by(share * turn_of(placed.frame.transpose() * other->frame));
  }
  return placed;
}

SparseMatrix nearest_motion(const std::vector<TurningPort>& ports, const Eigen::Vector3d& place,
                            Eigen::Index motions) {
  Eigen::MatrixXd normal = Eigen::MatrixXd::Zero(6, 6), right = Eigen::MatrixXd::Zero(6, motions);
  for (const auto& port : ports) {
    Eigen::Matrix<double, 3, 6> moved;
    moved << Eigen::Matrix3d::Identity(), -cross_matrix(port.place - place);
    normal += moved.transpose() * moved;
    right.middleCols<3>(port.column) += moved.transpose();
    if (!port.has_turns) continue;
    moved << Eigen::Matrix3d::Zero(), Eigen::Matrix3d::Identity();  // over a length of 1 mm
    normal += moved.transpose() * moved;
    right.middleCols<3>(port.column + 3) += moved.transpose();
  }
  return Eigen::MatrixXd(normal.ldlt().solve(right)).sparseView();
}

}  // namespace gapstrain::solver
