// Better shaped quads by moving nodes in the plane. Private to mesh/.
#pragma once

#include "mesh/shell_mesh.h"

#include <vector>

namespace gapstrain::mesh {

// Moves the nodes that are not `fixed`, one after the other, to where the worst of the quads round them get
// better: each node lowers the sum over those quads' corners of the squared condition number of the corner's
// Jacobian (Knupp 2000, Int. J. Numer. Meth. Engng 48, 401-420), which is 1 for a square and grows without bound
// as a corner flattens, so that no quad folds. `period` of the first coordinate, 0 when it has none.
// @throw MeshError when a quad between fixed nodes is folded all the same, as where two curves all but touch.
void smooth(FlatMesh& mesh, const std::vector<bool>& fixed, double period, int sweeps);

}  // namespace gapstrain::mesh
