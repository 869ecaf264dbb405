#include "structured_shell.h"

#include <Eigen/Geometry>

#include <algorithm>

namespace gapstrain::tests {

namespace {

bool goes_with_directors(const ShellModel& model, const std::array<int, 4>& cell) {
  const auto node = [&](std::size_t k) { return static_cast<std::size_t>(cell[k]); };
  const Eigen::Vector3d normal =
      (model.nodes[node(2)] - model.nodes[node(0)]).cross(model.nodes[node(3)] - model.nodes[node(1)]);
  return normal.dot(model.directors[node(0)] + model.directors[node(2)]) > 0.0;
}

}  // namespace

ShellModel structured_shell(const Grid& grid, const std::function<SurfacePoint(double a, double b)>& surface,
                            Cells cells, const solver::ShellMaterial& material) {
  ShellModel model;
  model.material = material;
  for (int j = 0; j <= grid.rows; ++j) {
    for (int i = 0; i < (grid.closed ? grid.columns : grid.columns + 1); ++i) {
      const auto point = surface(static_cast<double>(i) / grid.columns, static_cast<double>(j) / grid.rows);
      model.nodes.push_back(point.place);
      model.directors.push_back(point.director);
      model.thickness.push_back(point.thickness);
    }
  }
  for (int j = 0; j < grid.rows; ++j) {
    for (int i = 0; i < grid.columns; ++i) {
      std::array<int, 4> cell = {grid.node(i, j), grid.node(i + 1, j), grid.node(i + 1, j + 1),
                                 grid.node(i, j + 1)};
      if (!goes_with_directors(model, cell)) std::swap(cell[1], cell[3]);
      const auto [a, b, c, d] = cell;
      const bool second = cells == Cells::second_diagonal || (cells == Cells::chess_board && (i + j) % 2 == 1);
      if (cells == Cells::quads) {
        model.quads.push_back(cell);
      } else if (second) {
        model.triangles.push_back({a, b, d});
        model.triangles.push_back({b, c, d});
      } else {
        model.triangles.push_back({a, b, c});
        model.triangles.push_back({a, c, d});
      }
    }
  }
  return model;
}

Supports clamped_root(const Grid& grid) {
  Supports supports;
  for (int j = 0; j <= grid.rows; ++j) supports.hold(grid.node(0, j), {ux, uy, uz, rx, ry, rz});
  return supports;
}

Eigen::VectorXd tip_load(const Grid& grid, Motion motion, double total) {
  Eigen::VectorXd load = Eigen::VectorXd::Zero(6 * grid.count());
  for (int j = 0; j <= grid.rows; ++j)
    load(6 * grid.node(grid.columns, j) + motion) = total / grid.rows * (j == 0 || j == grid.rows ? 0.5 : 1.0);
  return load;
}

}  // namespace gapstrain::tests
