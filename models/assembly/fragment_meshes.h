// The bone's two fragments as shell meshes with matching edges at the fracture.
#pragma once

#include "mesh/gmsh_session.h"
#include "mesh/shell_mesh.h"
#include "models/assembly/planned_screw.h"
#include "models/geometry/bone_shape.h"
#include "models/parts/construct.h"

#include <memory>
#include <vector>

namespace gapstrain::models {

// One fragment's side of the fracture. Lists of both fragments match entry by entry.
struct FractureEdge {
  std::vector<int> nodes;
  std::vector<Eigen::Vector3d>
      mid_cortex;              // true place in the wall; the node itself is moved by the mesh (roll_up.h)
  std::vector<double> around;  // rad, from the plate's side towards +y, rising, in [0, 2 pi)
};

struct Fragment {
  std::shared_ptr<const mesh::ShellMesh> mesh;
  FractureEdge edge;
};

struct Fragments {
  Fragment proximal, distal;
};

// Groups of the meshes: those of mesh::cut_tube, with spots named by PlannedScrew and "section:K" for the K-th
// place in `section_lines` (x on the bone's axis, mm), on the fragment it lies in.
// @throw mesh::MeshError
Fragments mesh_fragments(const mesh::GmshSession& session, const Construct& construct, const BoneShape& shape,
                         const std::vector<PlannedScrew>& screws, const std::vector<double>& section_lines);

}  // namespace gapstrain::models
