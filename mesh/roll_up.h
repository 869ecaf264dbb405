// Bends a flat mesh onto a surface.
#pragma once

#include "mesh/shell_mesh.h"

#include <functional>

namespace gapstrain::mesh {

// A point of the target surface.
struct SurfacePoint {
  Eigen::Vector3d position;  // mm
  Eigen::Vector3d normal;    // unit, becomes the director
  double thickness = 0.0;    // along the normal, mm
  double stretch = 1.0;      // length on the surface per length along the flat mesh's first coordinate
  double curvature = 0.0;    // of the surface along that coordinate, 1/mm; positive: centre on the normal's back
};

using Surface = std::function<SurfacePoint(double first, double second)>;

// Maps every node of `flat`. Straight-sided cells cut the corners of a curved surface: where `curvature` is not
// zero each node is moved outward, and its wall thickened, by the mean sagitta of the cells around it, so that
// area and inertia of a tube's section come out exact to the fourth order of the edge angle (the correction 1 +
// x^2/3, x = half the angle an edge spans). `period` is the first coordinate's period (0: not periodic).
ShellMesh roll_up(const FlatMesh& flat, const Surface& surface, double period);

}  // namespace gapstrain::mesh
