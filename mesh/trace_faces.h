// Faces of a plane drawing of curves. Private to mesh/.
#pragma once

#include "mesh/plane_mesher.h"

#include <vector>

namespace gapstrain::mesh {

// Fills in outline.faces: what lies to the left of the given uses of its curves. An edge of the material is used
// once, a line through it both ways. Curves meet in their end points only. `inner_nodes` go to the faces they lie
// in.
void trace_faces(PlaneOutline& outline, const std::vector<CurveUse>& uses, const std::vector<int>& inner_nodes);

}  // namespace gapstrain::mesh
