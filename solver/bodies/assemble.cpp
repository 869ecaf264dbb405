#include "solver/bodies/assemble.h"

#include <Eigen/Geometry>

#include <array>
#include <cmath>
#include <unordered_map>

namespace gapstrain::solver {

namespace {

using Triplets = std::vector<Eigen::Triplet<double>>;

template <typename Cell, typename Matrix>
void scatter_lower(const Cell& cell, const Matrix& stiffness, Triplets& triplets) {
  const auto corners = static_cast<int>(cell.size());
  for (int column = 0; column < 6 * corners; ++column) {
    const int global_column = 6 * cell[static_cast<std::size_t>(column / 6)] + column % 6;
    for (int row = 0; row < 6 * corners; ++row) {
      const int global_row = 6 * cell[static_cast<std::size_t>(row / 6)] + row % 6;
      if (global_row >= global_column) triplets.emplace_back(global_row, global_column, stiffness(row, column));
    }
  }
}

SparseMatrix from_triplets(Eigen::Index size, const Triplets& triplets) {
  SparseMatrix matrix(size, size);
  matrix.setFromTriplets(triplets.begin(), triplets.end());
  return matrix;
}

}  // namespace

SparseMatrix assemble_stiffness(const Shell& shell) {
  Triplets triplets;
  triplets.reserve(300 * shell.mesh->quads.size() + 171 * shell.mesh->triangles.size());
  for (const auto& quad : shell.mesh->quads)
    scatter_lower(quad, quad_stiffness(quad_shape(shell, quad), shell.material), triplets);
  for (const auto& triangle : shell.mesh->triangles)
    scatter_lower(triangle, triangle_stiffness(triangle_shape(shell, triangle), shell.material), triplets);
  return from_triplets(shell.unknowns(), triplets);
}

SparseMatrix assemble_geometric_stiffness(const Shell& shell, const Eigen::VectorXd& displacements) {
  const auto gather = [&](const auto& cell) {
    Eigen::VectorXd local(static_cast<Eigen::Index>(6 * cell.size()));
    for (std::size_t corner = 0; corner < cell.size(); ++corner)
      local.segment<6>(static_cast<Eigen::Index>(6 * corner)) = displacements.segment<6>(6 * cell[corner]);
    return local;
  };
  Triplets triplets;
  const auto scatter = [&](const auto& cell, const auto& nodal) {
    for (std::size_t i = 0; i < cell.size(); ++i)
      for (std::size_t j = 0; j < cell.size(); ++j)
        if (cell[i] >= cell[j])
          triplets.emplace_back(cell[i], cell[j],
                                nodal(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)));
  };
  const double gauss = 1.0 / std::sqrt(3.0);
  for (const auto& quad : shell.mesh->quads) {
    const QuadShape shape = quad_shape(shell, quad);
    const double thickness = shape.thickness.mean();
    const Eigen::VectorXd local = gather(quad);
    Eigen::Matrix<double, 4, 3> membrane;
    const auto rows = quad_stresses(shape, shell.material, gauss, 0.0);
    for (std::size_t point = 0; point < 4; ++point)
      membrane.row(static_cast<Eigen::Index>(point)) = thickness * (rows[point] * local).transpose();
    scatter(quad, quad_geometric_stiffness(shape, membrane));
  }
  for (const auto& triangle : shell.mesh->triangles) {
    const TriangleShape shape = triangle_shape(shell, triangle);
    const Eigen::Vector3d membrane =
        shape.thickness.mean() * (triangle_stress(shape, shell.material, 0.0) * gather(triangle));
    scatter(triangle, triangle_geometric_stiffness(shape, membrane));
  }
  return from_triplets(shell.mesh->nodes.rows(), triplets);
}

PatchStiffness assemble_patch(const Shell& shell, const std::vector<int>& quads,
                              const std::vector<int>& triangles) {
  PatchStiffness patch;
  std::unordered_map<int, int> local;
  const auto localise = [&](const auto& cell) {
    auto result = cell;
    for (auto& node : result) {
      const auto [entry, is_new] = local.try_emplace(node, static_cast<int>(patch.nodes.size()));
      if (is_new) patch.nodes.push_back(node);
      node = entry->second;
    }
    return result;
  };
  Triplets triplets;
  for (const int index : quads) {
    const auto& quad = shell.mesh->quads[static_cast<std::size_t>(index)];
    scatter_lower(localise(quad), quad_stiffness(quad_shape(shell, quad), shell.material), triplets);
  }
  for (const int index : triangles) {
    const auto& triangle = shell.mesh->triangles[static_cast<std::size_t>(index)];
    scatter_lower(localise(triangle), triangle_stiffness(triangle_shape(shell, triangle), shell.material),
                  triplets);
  }
  patch.stiffness = from_triplets(6 * static_cast<Eigen::Index>(patch.nodes.size()), triplets);
  return patch;
}

Eigen::MatrixXd rigid_motions(const Eigen::MatrixX3d& points, const Eigen::Vector3d& origin, double length) {
  Eigen::MatrixXd motions = Eigen::MatrixXd::Zero(6 * points.rows(), 6);
  for (Eigen::Index node = 0; node < points.rows(); ++node) {
    const Eigen::Vector3d arm = points.row(node).transpose() - origin;
    motions.block<3, 3>(6 * node, 0).setIdentity();
    for (int axis = 0; axis < 3; ++axis)
      motions.block<3, 1>(6 * node, 3 + axis) = Eigen::Vector3d::Unit(axis).cross(arm) / length;
    motions.block<3, 3>(6 * node + 3, 3) = Eigen::Matrix3d::Identity() / length;
  }
  return motions;
}

}  // namespace gapstrain::solver
