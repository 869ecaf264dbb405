// The rules that `check` holds a construct against, one function a subject. `where` of every problem is a path of
// the case file's tables.
#pragma once

#include "models/parts/plate_shape.h"
#include "models/parts/problem_list.h"

#include <string>
#include <vector>

namespace gapstrain::models {

// Each part by itself.
void check_bone(const Bone& bone, ProblemList& problems);
void check_body_mass(const Construct& construct, ProblemList& problems);
void check_cortex(const CorticalBone& cortex, ProblemList& problems);
void check_metal(const Metal& metal, const std::string& where, ProblemList& problems);
void check_tissue(const Tissue& tissue, ProblemList& problems);
void check_plate(const Plate& plate, ProblemList& problems);
void check_fracture(const Construct& construct, ProblemList& problems);
void check_loads(const Construct& construct, ProblemList& problems);
void check_mesh_density(const MeshDensity& mesh, ProblemList& problems);

// Says of each screw whether it can be placed.
std::vector<bool> check_screws(const Construct& construct, ProblemList& problems);

// Parts on one another. These need a bone, and a plate, without errors of their own.
void check_bone_surface(const Bone& bone, const BoneShape& shape, ProblemList& problems);
void check_plate_on_bone(const Plate& plate, const PlateShape& plate_shape, const BoneShape& bone_shape,
                         ProblemList& problems);
void check_fracture_in_bone(const Fracture& fracture, const BoneShape& shape, ProblemList& problems);

struct PlacedScrew {
  std::size_t index;  // in the construct's list
  const Screw* screw;
  ScrewPlacement placement;
};

// Reports screws that miss the bone and returns the others.
std::vector<PlacedScrew> check_crossings(const Construct& construct, const std::vector<bool>& can_be_placed,
                                         const PlateShape& plate_shape, const BoneShape& bone_shape,
                                         ProblemList& problems);
void check_screw_distances(const std::vector<PlacedScrew>& screws, const BoneShape& shape, ProblemList& problems);
void check_screws_and_fracture(const std::vector<PlacedScrew>& screws, const Fracture& fracture,
                               const BoneShape& shape, ProblemList& problems);

// "screw[2]" and such, and how sentences name a screw: its label in quotes, or its hole.
std::string path_of_screw(std::size_t index);
std::string name_of(const Screw& screw);

}  // namespace gapstrain::models
