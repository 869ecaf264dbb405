// The rules that `check` holds a construct against, one function a subject. `where` of every problem is a path of
// the case file's tables.
#pragma once

#include "models/checks/problem_list.h"
#include "models/geometry/plate_shape.h"

#include <set>
#include <string>
#include <vector>

namespace gapstrain::models {

// Each part by itself.
void check_bone(const Bone& bone, ProblemList& problems);
void check_body_mass(const Construct& construct, ProblemList& problems);
void check_cortex(const CorticalBone& cortex, ProblemList& problems);
void check_metal(const Metal& metal, const std::string& where, ProblemList& problems);
void check_tissue(const Tissue& tissue, const std::string& where, ProblemList& problems);
void check_plate(const Plate& plate, ProblemList& problems);
void check_plate_system(const Plate& plate, ProblemList& problems);  // what its maker says of it
void check_prebend(const Plate& plate, ProblemList& problems);
void check_fracture(const Construct& construct, ProblemList& problems);
void check_loads(const Construct& construct, ProblemList& problems);
void check_contact(const Contact& contact, ProblemList& problems);
void check_healing(const Construct& construct, ProblemList& problems);
void check_stock(const Stock& stock, ProblemList& problems);
void check_layouts(const Construct& construct, ProblemList& problems);
void check_mesh_density(const MeshDensity& mesh, ProblemList& problems);

// Each says of every screw, or hold, whether it can be placed.
std::vector<bool> check_screws(const Construct& construct, ProblemList& problems);
std::vector<bool> check_temporary(const Construct& construct, ProblemList& problems);

// Whether the screw's kind suits the hole or entry it goes in, and what tightening is to bring.
bool check_seat(const Construct& construct, std::size_t index, ProblemList& problems);
bool fits_hole(ScrewKind kind, HoleShape shape);  // whether that kind of head may go in
void check_tightening(const Screw& screw, const std::string& where, ProblemList& problems);

// That no two parts have one label; with steps, that each has one. Says whether that is so.
bool check_labels(const Construct& construct, ProblemList& problems);

// The order of the operation, if steps give one; labels first.
void check_steps(const Construct& construct, ProblemList& problems);
// Labels of what the steps take out and do not put back.
std::set<std::string> taken_out(const Construct& construct);

// Parts on one another. These need a bone, and a plate, without errors of their own.
void check_bone_surface(const Bone& bone, const BoneShape& shape, ProblemList& problems);
void check_plate_on_bone(const Plate& plate, const PlateShape& plate_shape, const BoneShape& bone_shape,
                         ProblemList& problems);
void check_fracture_in_bone(const Fracture& fracture, const BoneShape& shape, ProblemList& problems);

// A screw, or a wire that stands for one, in its place.
struct PlacedScrew {
  std::string path;  // "screw[2]"
  std::string name;  // as sentences call it: screw "S3"
  Screw screw;
  ScrewPlacement placement;
  bool is_wire = false;
};

// What may be done about one that stands badly, a sentence.
std::string way_out(const PlacedScrew& screw);

// Reports screws and wires that miss the bone and returns the others.
std::vector<PlacedScrew> check_crossings(const Construct& construct, const std::vector<bool>& screws_can_be_placed,
                                         const std::vector<bool>& holds_can_be_placed,
                                         const PlateShape& plate_shape, const BoneShape& bone_shape,
                                         ProblemList& problems);
void check_screw_distances(const std::vector<PlacedScrew>& screws, const BoneShape& shape, ProblemList& problems);
// Of heads and tips of screws that stand beside the plate.
void check_beside_plate(const std::vector<PlacedScrew>& screws, const PlateShape& plate_shape, const Plate& plate,
                        ProblemList& problems);

// `gone`: labels of what does not hold the fragments in the end.
void check_screws_and_fracture(const std::vector<PlacedScrew>& screws, const std::set<std::string>& gone,
                               const Fracture& fracture, const BoneShape& shape, ProblemList& problems);
// Whether there is bone, and room in its mesh, where rollers stand and forces act.
void check_load_places(const Construct& construct, const std::vector<PlacedScrew>& screws, const BoneShape& shape,
                       ProblemList& problems);
void check_clamps_and_fracture(const Construct& construct, const std::vector<bool>& can_be_placed,
                               const PlateShape& plate_shape, const BoneShape& shape, ProblemList& problems);

// "screw[2]" and such, and how sentences name a screw: its label in quotes, or its hole.
std::string path_of_screw(std::size_t index);
std::string name_of(const Screw& screw);
// "load[1]"
std::string path_of_load(std::size_t index);
// "temporary[1]", and how sentences name a hold: wire "W1".
std::string path_of_hold(std::size_t index);
std::string name_of(const TemporaryHold& hold);

}  // namespace gapstrain::models
