// The plate as a shell mesh, bent as it lies on the bone.
#pragma once

#include "mesh/gmsh_session.h"
#include "models/assembly/meshes.h"
#include "models/geometry/plate_shape.h"
#include "models/parts/construct.h"

namespace gapstrain::models {

// @throw mesh::MeshError
PlateMesh mesh_plate(const mesh::GmshSession& session, const Plate& plate, const PlateShape& shape,
                     const MeshDensity& density);

}  // namespace gapstrain::models
