#include "solver/bodies/stress.h"

#include <Eigen/LU>

#include <algorithm>
#include <array>
#include <cmath>

namespace gapstrain::solver {

namespace {

constexpr std::array<std::array<double, 2>, 4> corners = {{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}};

// Calls visit(node, cell, rows) for every corner of every cell on a wanted node.
template <typename Wanted, typename Visit>
void visit_corner_rows(const Shell& shell, double zeta, const Wanted& wanted, const Visit& visit) {
  for (const auto& quad : shell.mesh->quads) {
    if (std::none_of(quad.begin(), quad.end(), wanted)) continue;
    const auto rows = quad_stresses(quad_shape(shell, quad), shell.material, 1.0, zeta);
    for (std::size_t corner = 0; corner < 4; ++corner)
      if (wanted(quad[corner])) visit(quad[corner], quad, rows[corner]);
  }
  for (const auto& triangle : shell.mesh->triangles) {
    const TriangleShape shape = triangle_shape(shell, triangle);
    for (const int node : triangle)
      if (wanted(node)) visit(node, triangle, triangle_stress(shape, shell.material, zeta));
  }
}

// Cells on each node.
Eigen::VectorXd count_cells(const mesh::ShellMesh& mesh) {
  Eigen::VectorXd count = Eigen::VectorXd::Zero(mesh.nodes.rows());
  const auto add = [&](const auto& cells) {
    for (const auto& cell : cells)
      for (const int node : cell) count(node) += 1.0;
  };
  add(mesh.quads);
  add(mesh.triangles);
  return count;
}

// Unknowns of a cell's nodes out of those of the body, a column each. (6 corners x k)
template <typename Cell>
Eigen::MatrixXd gather(const Cell& cell, const Eigen::MatrixXd& displacements) {
  Eigen::MatrixXd local(static_cast<Eigen::Index>(6 * cell.size()), displacements.cols());
  for (std::size_t corner = 0; corner < cell.size(); ++corner)
    local.middleRows<6>(static_cast<Eigen::Index>(6 * corner)) = displacements.middleRows<6>(6 * cell[corner]);
  return local;
}

}  // namespace

SparseMatrix node_stress_rows(const Shell& shell, const std::vector<int>& nodes, double zeta) {
  std::vector<int> position(static_cast<std::size_t>(shell.mesh->nodes.rows()), -1);
  for (std::size_t k = 0; k < nodes.size(); ++k)
    position[static_cast<std::size_t>(nodes[k])] = static_cast<int>(k);
  const auto cells_at = count_cells(*shell.mesh);

  std::vector<Eigen::Triplet<double>> triplets;
  visit_corner_rows(
      shell, zeta, [&](int node) { return position[static_cast<std::size_t>(node)] >= 0; },
      [&](int node, const auto& cell, const auto& rows) {
        const int first = 3 * position[static_cast<std::size_t>(node)];
        const double weight = 1.0 / cells_at(node);
        for (Eigen::Index column = 0; column < rows.cols(); ++column)
          for (int row = 0; row < 3; ++row)
            triplets.emplace_back(first + row,
                                  6 * cell[static_cast<std::size_t>(column / 6)] + static_cast<int>(column % 6),
                                  weight * rows(row, column));
      });
  SparseMatrix matrix(static_cast<Eigen::Index>(3 * nodes.size()), shell.unknowns());
  matrix.setFromTriplets(triplets.begin(), triplets.end());
  return matrix;
}

Eigen::MatrixXd node_stress(const Shell& shell, const Eigen::MatrixXd& displacements, double zeta) {
  Eigen::MatrixXd stress = Eigen::MatrixXd::Zero(3 * shell.mesh->nodes.rows(), displacements.cols());
  visit_corner_rows(
      shell, zeta, [](int) { return true; },
      [&](int node, const auto& cell, const auto& rows) {
        stress.middleRows<3>(3 * node) += rows * gather(cell, displacements);
      });
  const Eigen::VectorXd cells_at = count_cells(*shell.mesh);
  for (Eigen::Index node = 0; node < cells_at.size(); ++node)
    if (cells_at(node) > 0.0) stress.middleRows<3>(3 * node) /= cells_at(node);
  return stress;
}

double stress_jump(const Shell& shell, const Eigen::VectorXd& displacements, int node, double zeta, double scale) {
  const Eigen::VectorXd average = node_stress_rows(shell, {node}, zeta) * displacements;
  double largest = 0.0;
  visit_corner_rows(
      shell, zeta, [&](int other) { return other == node; },
      [&](int, const auto& cell, const auto& rows) {
        const Eigen::Vector3d difference = rows * gather(cell, displacements) - average;
        const double jump = von_mises(difference.transpose())(0);
        if (std::isnan(jump) || jump > largest) largest = jump;  // and stays, unlike in std::max
      });
  return largest / scale;
}

Eigen::VectorXd recovery_error_energy(const Shell& shell, const Eigen::MatrixXd& displacements) {
  const double gauss = 1.0 / std::sqrt(3.0);
  const Eigen::Matrix3d compliance = shell.material.plane_stress.inverse();
  Eigen::VectorXd energy = Eigen::VectorXd::Zero(displacements.cols());
  for (const double zeta : {-gauss, gauss}) {
    const Eigen::MatrixXd recovered = node_stress(shell, displacements, zeta);
    for (const auto& quad : shell.mesh->quads) {
      const QuadShape shape = quad_shape(shell, quad);
      const Eigen::MatrixXd local = gather(quad, displacements);
      const double volume = quad_area(shape) * shape.thickness.mean() / 2.0;  // of this level
      const auto rows = quad_stresses(shape, shell.material, gauss, zeta);
      for (std::size_t corner = 0; corner < 4; ++corner) {
        const double xi = gauss * corners[corner][0], eta = gauss * corners[corner][1];
        Eigen::Matrix<double, 3, Eigen::Dynamic> difference = -(rows[corner] * local);
        for (std::size_t k = 0; k < 4; ++k)
          difference += 0.25 * (1.0 + xi * corners[k][0]) * (1.0 + eta * corners[k][1]) *
                        recovered.middleRows<3>(3 * quad[k]);
        energy +=
            0.5 * volume / 4.0 * difference.cwiseProduct(compliance * difference).colwise().sum().transpose();
      }
    }
  }
  return energy;
}

Eigen::VectorXd von_mises(const Eigen::MatrixX3d& stress) {
  const auto s11 = stress.col(0).array();
  const auto s22 = stress.col(1).array();
  const auto s12 = stress.col(2).array();
  return (s11.square() - s11 * s22 + s22.square() + 3.0 * s12.square()).sqrt().matrix();
}

Eigen::MatrixX3d as_rows(const Eigen::VectorXd& stacked) {
  return Eigen::Map<const Eigen::Matrix<double, Eigen::Dynamic, 3, Eigen::RowMajor>>(stacked.data(),
                                                                                     stacked.size() / 3, 3);
}

}  // namespace gapstrain::solver
