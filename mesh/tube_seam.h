// Where to slit an unrolled tube. Private to mesh/.
#pragma once

#include "mesh/cut_tube.h"

namespace gapstrain::mesh {

// The s in [0, perimeter) of the line along the tube that lies clear of all spots and meets the cut as squarely as
// can be; with no cut or a transverse one, the line farthest from the spots.
// @throw MeshError when every line along the tube meets a spot.
double choose_seam(const UnrolledTube& tube);

}  // namespace gapstrain::mesh
