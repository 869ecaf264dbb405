// A body that turns by any angle and stays linear in frames that turn with it.
//
// A body has one such frame or, if it bends like a plate, a chain of them: nodes. Its motions q stay coordinates
// of its linear law, q = C lambda + G a, and its energy is that of the law; where its ports are in space is a
// function of q:
//   a body's first node is moved by its shift u and turned by exp(theta);
//   from a node to the next one the linear law gives a turn phi = theta' - theta and a strain of the way L between
//   them, delta = u' - u - (theta + theta') / 2 x L; then R' = R exp(phi), x' = x + R exp(phi / 2) (L + delta +
//   s), with s what the cubic between them is shorter for its slopes; only these are taken to be small
//   (co-rotational beams: M. A. Crisfield 1990, Comput. Methods Appl. Mech. Eng. 81, p. 131, from memory); ports
//   move in the frame of their node as the linear law has it.
// Forces on ports in space do work on changes of q: pulled back so they are those that the linear law needs.
// Balance about the deformed body and forces of links that turn as a whole follow from that exactly.
#pragma once

#include "solver/bodies/body.h"

#include <Eigen/Core>

#include <vector>

namespace gapstrain::solver {

using Vector6 = Eigen::Matrix<double, 6, 1>;

struct TurningNode {
  Eigen::Vector3d place;
  SparseMatrix reading;  // (6 x the body's motions): its shifts and turns
  int before = -1;       // the node from which it is reached; -1 of the first one only
};

// Three shifts and perhaps three turns begin at its column; motions behind them are strains, and stay linear.
struct TurningPort {
  Eigen::Vector3d place;
  Eigen::Index column = 0;
  bool has_turns = false;
  std::size_t node = 0;  // with which it turns
};

struct TurningBody {
  std::vector<TurningNode> nodes;  // each behind the one it is reached from
  std::vector<TurningPort> ports;
};

// A node, or a port, as it is placed in space.
struct Placed {
  Eigen::Vector3d place;
  Eigen::Matrix3d frame;
};

// A node in space, with what it was read from.
struct PlacedNode : Placed {
  Eigen::Vector3d from;  // where it was
  Vector6 linear;
};
using PlacedBody = std::vector<PlacedNode>;

PlacedBody place_nodes(const TurningBody& body, const Eigen::VectorXd& motions);
std::vector<Placed> place_ports(const TurningBody& body, const PlacedBody& nodes, const Eigen::VectorXd& motions);

// Forces and moments on the ports in space (one column a port, moments about its place) as
// forces on motions.
Eigen::VectorXd pull_back(const TurningBody& body, const PlacedBody& nodes, const std::vector<Placed>& ports,
                          const Eigen::VectorXd& motions,
                          const Eigen::Matrix<double, 6, Eigen::Dynamic>& wrenches);

// Largest turn of any node, and the largest that is left within a part: half of that between two nodes, and of
// ports in their node's frame. rad
double largest_turn(const PlacedBody& nodes);
double largest_turn_within(const TurningBody& body, const PlacedBody& nodes, const Eigen::VectorXd& motions);

// Where a point of a placed body is that the linear law moves by `shift`: between two nodes of a chain in the mean
// of both frames, by its way between them.
Placed place_point(const PlacedBody& nodes, const Eigen::Vector3d& point, const Eigen::Vector3d& shift);

// The rigid motion nearest to those of ports: shifts and turns about `place`. @pre they are not all in one place
SparseMatrix nearest_motion(const std::vector<TurningPort>& ports, const Eigen::Vector3d& place,
                            Eigen::Index motions);

}  // namespace gapstrain::solver
