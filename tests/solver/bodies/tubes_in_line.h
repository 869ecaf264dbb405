// Tubes end to end along x with contact between their edges: a joint in miniature, for tests of contact.
#pragma once

#include "solver/bodies/pressed.h"
#include "tests/framework/numbers.h"
#include "tests/solver/bodies/structured_meshes.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

namespace gapstrain::tests {

constexpr int pairs_around = 16;  // cells and contact pairs of a tube

// A tube seen from a ring at each end (6 motions each) and from spots at the nodes of one edge (3 motions each).
// The spots lie where a uniform axial stress has its nodal resultants, so that the same push on all of them bends
// nothing: outward, since the outer half of a curved wall is the larger one, and inward, since cells are flat and
// their drilling rotations bow their edges (Allman's quadratic shapes).
struct Tube {
  solver::Body body;
  solver::Ports ports;
  solver::Condensed condensed;

  static constexpr Eigen::Index ring(int end) { return 6 * end; }
  static constexpr Eigen::Index point(int number) { return 12 + 3 * number; }
};

inline Tube make_tube(double radius, double wall, double start, double length,
                      const solver::ShellMaterial& material, int edge) {
  solver::Body body(solver::Shell{tube(radius, wall, start, length, pairs_around, 8), material});
  const auto& mesh = *body.shell().mesh;
  std::vector<solver::Port> ports;
  for (const int end : {0, 1})
    ports.push_back(solver::reaction_port(body.shell(), mesh.groups.at("end:" + std::to_string(end)),
                                          {start + end * length, 0.0, 0.0}, radius, Eigen::Matrix3d::Identity(),
                                          solver::RimModes::rigid));
  const double half_angle = std::numbers::pi / pairs_around;
  const double offset = wall * wall / (12.0 * radius) - radius * std::pow(std::sin(half_angle), 2) / 3.0;
  for (const int node : mesh.groups.at("end:" + std::to_string(edge)))
    ports.push_back(solver::point_port(body.shell(), {node}, {1.0}, offset));
  auto joined = solver::join_ports(body.shell().unknowns(), ports);
  auto condensed = body.condense(joined);
  return {std::move(body), std::move(joined), std::move(condensed)};
}

// Area of the wall as it is meshed: between two regular polygons.
inline double tube_area(double radius, double wall) {
  return pairs_around * radius * std::sin(2.0 * std::numbers::pi / pairs_around) * wall;
}

inline solver::LinkEnd at_ring(std::size_t body, int end,
                               const Eigen::MatrixXd& transfer = Eigen::MatrixXd::Identity(6, 6)) {
  return {body, Tube::ring(end), transfer};
}

// What a contact pair's surfaces give, mm/N, and the gap between them.
struct Surface {
  double give = 1e-6;
  double give_across = 2e-6;
  double gap = 0.0;
};

// The two directions of a pair's tractions.
inline Eigen::Matrix<double, 3, 2> across_normal(const Eigen::Vector3d& normal) {
  Eigen::Matrix<double, 3, 2> across;
  across.col(0) = normal.unitOrthogonal();
  across.col(1) = normal.cross(across.col(0));
  return across;
}

// Pairs all round the edges of two tubes. `normal`: from the first towards the second.
inline std::vector<solver::ContactPair> add_pairs(std::vector<solver::Link>& links, std::size_t first,
                                                  std::size_t second, const Eigen::Vector3d& normal,
                                                  const Surface& surface) {
  const auto across = across_normal(normal);
  std::vector<solver::ContactPair> pairs;
  for (int point = 0; point < pairs_around; ++point) {
    const auto join = [&](const Eigen::MatrixXd& directions, double give, double initial) {
      links.push_back({"pair",
                       {{first, Tube::point(point), -directions}, {second, Tube::point(point), directions}},
                       give * Eigen::MatrixXd::Identity(directions.cols(), directions.cols()),
                       Eigen::VectorXd::Constant(directions.cols(), initial)});
      return static_cast<int>(links.size()) - 1;
    };
    solver::ContactPair pair;
    pair.normal = join(normal, surface.give, -surface.gap);
    pair.tangent = join(across, surface.give_across, 0.0);
    pairs.push_back(pair);
  }
  return pairs;
}

// These links at their own initial deformations, one coefficient of friction for all pairs, hands at zero.
inline solver::Setting setting_of(const solver::System& system, const std::vector<solver::ContactPair>& pairs,
                                  std::vector<int> links, double friction) {
  solver::Setting setting;
  setting.links = std::move(links);
  setting.initial = system.initial();
  setting.friction = Eigen::VectorXd::Constant(static_cast<Eigen::Index>(pairs.size()), friction);
  setting.hands.at = Eigen::VectorXd::Zero(system.rigid().cols());
  return setting;
}

}  // namespace gapstrain::tests
