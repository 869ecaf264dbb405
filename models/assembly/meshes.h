// The meshes of a construct's plates and fragments, as values: who made them does not matter here.
#pragma once

#include "mesh/shell_mesh.h"

#include <memory>
#include <optional>
#include <vector>

namespace gapstrain::models {

struct PlateMesh {
  std::shared_ptr<const mesh::ShellMesh> mesh;  // groups as mesh::perforated_plate: "hole:K", K from 0
  Eigen::MatrixX2d along_across;                // (n x 2) each node's place on the flat plate, mm
};

// One fragment's side of a fracture. Lists of both sides match entry by entry.
struct FractureEdge {
  std::vector<int> nodes;
  std::vector<Eigen::Vector3d>
      mid_cortex;              // true place in the wall; the node itself is moved by the mesh (roll_up.h)
  std::vector<double> around;  // rad, from the plate's side towards +y, rising, in [0, 2 pi)
};

struct Fragment {
  std::shared_ptr<const mesh::ShellMesh> mesh;
  std::optional<FractureEdge> proximal_edge, distal_edge;  // nothing where the bone itself ends
};

}  // namespace gapstrain::models
