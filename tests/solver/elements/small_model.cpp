#include "small_model.h"

#include <Eigen/SparseCholesky>

#include <cmath>
#include <stdexcept>

namespace gapstrain::tests {

namespace {

using Triplets = std::vector<Eigen::Triplet<double>>;

template <std::size_t Corners, typename Matrix>
void scatter(Triplets& triplets, const std::array<int, Corners>& cell, const Matrix& matrix) {
  const auto unknown = [&](Eigen::Index k) {
    return 6 * cell[static_cast<std::size_t>(k / 6)] + static_cast<int>(k % 6);
  };
  for (Eigen::Index i = 0; i < matrix.rows(); ++i)
    for (Eigen::Index j = 0; j < matrix.cols(); ++j)
      if (matrix(i, j) != 0.0) triplets.emplace_back(unknown(i), unknown(j), matrix(i, j));
}

Eigen::SparseMatrix<double> collect(const ShellModel& model, const Triplets& triplets) {
  Eigen::SparseMatrix<double> matrix(model.unknowns(), model.unknowns());
  matrix.setFromTriplets(triplets.begin(), triplets.end());
  return matrix;
}

template <typename Shape, std::size_t Corners>
Shape shape_of(const ShellModel& model, const std::array<int, Corners>& cell) {
  Shape shape;
  for (std::size_t k = 0; k < Corners; ++k) {
    const auto row = static_cast<Eigen::Index>(k);
    const auto node = static_cast<std::size_t>(cell[k]);
    shape.nodes.row(row) = model.nodes[node].transpose();
    shape.directors.row(row) = model.directors[node].transpose();
    shape.thickness(row) = model.thickness[node];
  }
  shape.axis_1 = model.axis_1;
  return shape;
}

Eigen::Matrix<double, 24, 1> quad_unknowns(const ShellModel& model, const Eigen::VectorXd& displacement,
                                           std::size_t cell) {
  Eigen::Matrix<double, 24, 1> local;
  for (std::size_t k = 0; k < 4; ++k)
    local.segment<6>(6 * static_cast<Eigen::Index>(k)) = displacement.segment<6>(6 * model.quads[cell][k]);
  return local;
}

}  // namespace

solver::QuadShape quad_shape(const ShellModel& model, std::size_t cell) {
  return shape_of<solver::QuadShape>(model, model.quads[cell]);
}

solver::TriangleShape triangle_shape(const ShellModel& model, std::size_t cell) {
  return shape_of<solver::TriangleShape>(model, model.triangles[cell]);
}

Eigen::SparseMatrix<double> assemble_stiffness(const ShellModel& model) {
  Triplets triplets;
  triplets.reserve(576 * model.quads.size() + 324 * model.triangles.size());
  for (std::size_t cell = 0; cell < model.quads.size(); ++cell)
    scatter(triplets, model.quads[cell], solver::quad_stiffness(quad_shape(model, cell), model.material));
  for (std::size_t cell = 0; cell < model.triangles.size(); ++cell)
    scatter(triplets, model.triangles[cell],
            solver::triangle_stiffness(triangle_shape(model, cell), model.material));
  return collect(model, triplets);
}

Eigen::SparseMatrix<double> assemble_geometric_stiffness(const ShellModel& model,
                                                         const Eigen::VectorXd& displacement) {
  const double gauss = 1.0 / std::sqrt(3.0);
  const std::array<std::array<double, 2>, 4> points = {
      {{-gauss, -gauss}, {gauss, -gauss}, {gauss, gauss}, {-gauss, gauss}}};
  Triplets triplets;
  for (std::size_t cell = 0; cell < model.quads.size(); ++cell) {
    const auto shape = quad_shape(model, cell);
    const auto local = quad_unknowns(model, displacement, cell);
    Eigen::Matrix<double, 4, 3> force;
    for (std::size_t k = 0; k < 4; ++k)
      force.row(static_cast<Eigen::Index>(k)) =
          shape.thickness.mean() *
          (solver::quad_stress(shape, model.material, points[k][0], points[k][1], 0.0) * local).transpose();
    const Eigen::Matrix4d nodal = solver::quad_geometric_stiffness(shape, force);
    Eigen::Matrix<double, 24, 24> full = Eigen::Matrix<double, 24, 24>::Zero();
    for (int i = 0; i < 4; ++i)
      for (int j = 0; j < 4; ++j) full.block<3, 3>(6 * i, 6 * j) = nodal(i, j) * Eigen::Matrix3d::Identity();
    scatter(triplets, model.quads[cell], full);
  }
  return collect(model, triplets);
}

Answer solve(const Eigen::SparseMatrix<double>& stiffness, const Supports& supports, const Eigen::VectorXd& load) {
  const auto size = static_cast<int>(stiffness.rows());
  std::vector<int> free_index(static_cast<std::size_t>(size), -1);
  int free_count = 0;
  Eigen::VectorXd displacement = Eigen::VectorXd::Zero(size);
  for (int k = 0; k < size; ++k) {
    const auto held = supports.values.find(k);
    if (held == supports.values.end())
      free_index[static_cast<std::size_t>(k)] = free_count++;
    else
      displacement(k) = held->second;
  }
  const Eigen::VectorXd rest = load - stiffness * displacement;
  Eigen::VectorXd right(free_count);
  Triplets triplets;
  triplets.reserve(static_cast<std::size_t>(stiffness.nonZeros()));
  for (int column = 0; column < size; ++column) {
    const int j = free_index[static_cast<std::size_t>(column)];
    if (j < 0) continue;
    right(j) = rest(column);
    for (Eigen::SparseMatrix<double>::InnerIterator entry(stiffness, column); entry; ++entry) {
      const int i = free_index[static_cast<std::size_t>(entry.row())];
      if (i >= 0) triplets.emplace_back(i, j, entry.value());
    }
  }
  Answer answer{displacement, {}};
  if (free_count > 0) {
    Eigen::SparseMatrix<double> reduced(free_count, free_count);
    reduced.setFromTriplets(triplets.begin(), triplets.end());
    const Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> factor(reduced);
    if (factor.info() != Eigen::Success) throw std::runtime_error("the supports leave the model free to move");
    const Eigen::VectorXd found = factor.solve(right);
    for (int k = 0; k < size; ++k)
      if (free_index[static_cast<std::size_t>(k)] >= 0)
        answer.displacement(k) = found(free_index[static_cast<std::size_t>(k)]);
  }
  answer.reaction = stiffness * answer.displacement - load;
  return answer;
}

Answer solve(const ShellModel& model, const Supports& supports, const Eigen::VectorXd& load) {
  return solve(assemble_stiffness(model), supports, load);
}

Eigen::Vector3d averaged_stress(const ShellModel& model, const Eigen::VectorXd& displacement, int node,
                                double zeta) {
  constexpr std::array<double, 4> xi = {-1, 1, 1, -1}, eta = {-1, -1, 1, 1};
  Eigen::Vector3d sum = Eigen::Vector3d::Zero();
  int count = 0;
  for (std::size_t cell = 0; cell < model.quads.size(); ++cell) {
    for (std::size_t k = 0; k < 4; ++k) {
      if (model.quads[cell][k] != node) continue;
      sum += solver::quad_stress(quad_shape(model, cell), model.material, xi[k], eta[k], zeta) *
             quad_unknowns(model, displacement, cell);
      ++count;
    }
  }
  return sum / count;
}

Eigen::VectorXd even_load(const ShellModel& model, const Eigen::Vector3d& per_area) {
  Eigen::VectorXd load = Eigen::VectorXd::Zero(model.unknowns());
  for (std::size_t cell = 0; cell < model.quads.size(); ++cell)
    for (const int node : model.quads[cell])
      load.segment<3>(6 * node) += solver::quad_area(quad_shape(model, cell)) / 4.0 * per_area;
  return load;
}

}  // namespace gapstrain::tests
