// A strip of shells with ports on lines across it, to be held, loaded and bent.
#pragma once

#include "solver/bodies/system.h"
#include "tests/solver/bodies/structured_meshes.h"

#include <Eigen/Core>

#include <vector>

namespace gapstrain::tests {

inline constexpr double strip_length = 100.0, strip_width = 10.0, strip_thickness = 2.0, strip_modulus = 113800.0;
inline constexpr double strip_stiffness =
    strip_modulus * strip_width * strip_thickness * strip_thickness * strip_thickness / 12.0;
inline constexpr int strip_cells = 40, cells_across = 2;

// A strip with ports on lines across it.
struct PortedStrip {
  explicit PortedStrip(int pieces)
      : body({strip(strip_length, strip_width, strip_thickness, strip_cells, cells_across),
              solver::isotropic_shell(strip_modulus, 0.0)}) {
    std::vector<solver::Port> list;
    for (int k = 0; k <= pieces; ++k) {
      const int i = strip_cells * k / pieces;
      std::vector<int> nodes;
      for (int j = 0; j <= cells_across; ++j) nodes.push_back(i * (cells_across + 1) + j);
      const Eigen::Vector3d centre(strip_length * i / strip_cells, 0.0, 0.0);
      list.push_back(solver::reaction_port(body.shell(), nodes, centre, 8.0, Eigen::Matrix3d::Identity(),
                                           solver::RimModes::rigid));
      centres.push_back(centre);
    }
    condensed = body.condense(solver::join_ports(body.shell().unknowns(), list));
  }
  Eigen::Index motions() const { return condensed.compliance.rows(); }
  Eigen::Index tip() const { return motions() - 6; }

  solver::Body body;
  std::vector<Eigen::Vector3d> centres;  // of ports, six motions each
  solver::Condensed condensed;
};

// Motions of a port that the ground holds.
inline solver::Link hold_port(Eigen::Index column, const std::vector<int>& motions) {
  const auto count = static_cast<Eigen::Index>(motions.size());
  Eigen::MatrixXd transfer = Eigen::MatrixXd::Zero(6, count);
  for (std::size_t k = 0; k < motions.size(); ++k) transfer(motions[k], static_cast<Eigen::Index>(k)) = 1.0;
  return {"support", {{0, column, transfer}}, Eigen::MatrixXd::Zero(count, count), Eigen::VectorXd::Zero(count)};
}

}  // namespace gapstrain::tests
