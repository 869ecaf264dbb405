// Structured shell meshes on any surface given by two parameters, for the published problems.
#pragma once

#include "small_model.h"

#include <functional>

namespace gapstrain::tests {

struct SurfacePoint {
  Eigen::Vector3d place, director;
  double thickness = 0.0;
};

// Each quad cut along its first diagonal, its second one, or one and the other by turns as on a chess board.
enum class Cells { quads, first_diagonal, second_diagonal, chess_board };

struct Grid {
  int columns = 0, rows = 0;  // elements along a and b
  bool closed = false;        // a = 1 is a = 0

  int node(int i, int j) const {
    const int across = closed ? columns : columns + 1;
    return j * across + (closed ? i % columns : i);
  }
  int count() const { return (closed ? columns : columns + 1) * (rows + 1); }
};

// Nodes at the grid's parameters (a, b) in [0, 1]^2; elements turned so that their normal goes with the directors.
ShellModel structured_shell(const Grid& grid, const std::function<SurfacePoint(double a, double b)>& surface,
                            Cells cells, const solver::ShellMaterial& material);

// What strips clamped at a = 0 and loaded at a = 1 have in common.
Supports clamped_root(const Grid& grid);
Eigen::VectorXd tip_load(const Grid& grid, Motion motion, double total);  // spread evenly over the end line

}  // namespace gapstrain::tests
