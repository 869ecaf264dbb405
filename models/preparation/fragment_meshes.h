// The bone's fragments as shell meshes with matching edges at the fracture.
#pragma once

#include "mesh/gmsh_session.h"
#include "models/assembly/meshes.h"
#include "models/assembly/planned_screw.h"
#include "models/geometry/bone_shape.h"
#include "models/parts/construct.h"

#include <vector>

namespace gapstrain::models {

// From proximal to distal. Groups of the meshes: those of mesh::cut_tube, with spots named by PlannedScrew and
// "section:K" for the K-th place in `section_lines` (x on the bone's axis, mm), on the fragment it lies in.
// @throw mesh::MeshError
std::vector<Fragment> mesh_fragments(const mesh::GmshSession& session, const Construct& construct,
                                     const BoneShape& shape, const std::vector<PlannedScrew>& screws,
                                     const std::vector<double>& section_lines);

}  // namespace gapstrain::models
