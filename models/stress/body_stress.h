// Node stresses of a whole body at the three levels of its wall.
#pragma once

#include "solver/bodies/shell.h"

#include <Eigen/Core>

#include <vector>

namespace gapstrain::models {

// (n x 3) each: s11, s22, s12 in material axes, MPa; top is the director's side.
struct BodyStress {
  Eigen::MatrixX3d top, middle, bottom;
};

// One for each column of `displacements` (6n x k).
std::vector<BodyStress> read_stress(const solver::Shell& shell, const Eigen::MatrixXd& displacements);

}  // namespace gapstrain::models
