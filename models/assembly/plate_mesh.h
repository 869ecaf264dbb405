// The plate as a shell mesh, bent as it lies on the bone.
#pragma once

#include "mesh/gmsh_session.h"
#include "mesh/shell_mesh.h"
#include "models/geometry/plate_shape.h"
#include "models/parts/construct.h"

#include <memory>

namespace gapstrain::models {

struct PlateMesh {
  std::shared_ptr<const mesh::ShellMesh> mesh;  // groups as mesh::perforated_plate: "hole:K", K from 0
  Eigen::MatrixX2d along_across;                // (n x 2) each node's place on the flat plate, mm
};

// @throw mesh::MeshError
PlateMesh mesh_plate(const mesh::GmshSession& session, const Construct& construct, const PlateShape& shape);

}  // namespace gapstrain::models
