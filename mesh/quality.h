// Figures that tell whether a mesh is fit for use.
#pragma once

#include "mesh/shell_mesh.h"

namespace gapstrain::mesh {

struct Quality {
  int quads = 0;
  int triangles = 0;
  double smallest_angle = 0.0;            // rad
  double largest_angle = 0.0;             // rad
  double smallest_scaled_jacobian = 0.0;  // of the quads, 1 for a rectangle, <= 0 for a folded one
  double mean_scaled_jacobian = 0.0;
};

Quality quality(const ShellMesh& mesh);

// V - E + F: 0 for a closed band (tube), 1 minus the number of holes for a plate.
int euler_characteristic(const ShellMesh& mesh);

}  // namespace gapstrain::mesh
