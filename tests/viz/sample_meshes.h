// Structured meshes for the sample, made without a mesher.
#pragma once

#include "mesh/shell_mesh.h"

namespace gapstrain::tests {

struct StripOfHoles {
  int holes = 1;
  double start = 0.0, pitch = 1.0, width = 1.0, radius = 0.25, height = 0.0, thickness = 0.1;  // mm
  int around = 32;                                                                             // divisible by 4
  int layers = 6;
};

// Flat bar at z = height from x = start on, one hole a pitch. Directors +z. Groups "hole:K".
mesh::ShellMesh strip_of_holes(const StripOfHoles& strip);

struct EllipticTube {
  double from = 0.0, to = 1.0;                    // along x, mm
  double half_width_y = 1.0, half_width_z = 1.0;  // of the mid-surface
  double wall = 0.1;
  int around = 48, along = 40;
};

// Directors outward.
mesh::ShellMesh elliptic_tube(const EllipticTube& tube);

}  // namespace gapstrain::tests
