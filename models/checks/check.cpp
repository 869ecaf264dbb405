#include "models/checks/checks.h"

#include <fmt/format.h>

#include <cmath>

namespace gapstrain::models {

namespace {

// What can only be asked once both bone and plate have a shape.
void check_together(const Construct& construct, const BoneShape& bone_shape, bool is_fracture_sound,
                    const std::vector<bool>& screws_can_be_placed, const std::vector<bool>& holds_can_be_placed,
                    ProblemList& problems) {
  const PlateShape plate_shape(construct.plate, bone_shape);
  check_plate_on_bone(construct.plate, plate_shape, bone_shape, problems);
  const auto placed =
      check_crossings(construct, screws_can_be_placed, holds_can_be_placed, plate_shape, bone_shape, problems);
  check_screw_distances(placed, bone_shape, problems);
  check_beside_plate(placed, plate_shape, construct.plate, problems);
  if (!is_fracture_sound) return;
  check_screws_and_fracture(placed, taken_out(construct), construct.fracture, bone_shape, problems);
  check_clamps_and_fracture(construct, holds_can_be_placed, plate_shape, bone_shape, problems);
}

}  // namespace

void check_mesh_density(const MeshDensity& mesh, ProblemList& problems) {
  if (!(mesh.refinement >= 0.25 && mesh.refinement <= 4.0))
    problems.error("mesh.refinement",
                   fmt::format("The refinement is {:.4g}; allowed is 0.25 to 4, and 1 is a good "
                               "start.",
                               mesh.refinement));
  if (mesh.rim_elements < MeshDensity::least_rim_elements || mesh.rim_elements > MeshDensity::most_rim_elements)
    problems.error("mesh.rim_elements",
                   fmt::format("{} elements round each plate hole; allowed are {} to {}, and {} is a good start.",
                               mesh.rim_elements, MeshDensity::least_rim_elements, MeshDensity::most_rim_elements,
                               MeshDensity{}.rim_elements));
}

std::vector<Problem> check(const Construct& construct) {
  ProblemList problems;
  check_bone(construct.bone, problems);
  std::optional<BoneShape> bone_shape;
  if (problems.error_count() == 0) {
    bone_shape.emplace(construct.bone, construct.plate.aspect);
    check_bone_surface(construct.bone, *bone_shape, problems);
  }
  const bool is_bone_sound = problems.error_count() == 0;
  check_cortex(construct.bone.cortex, problems);
  check_body_mass(construct, problems);

  const auto before_plate = problems.error_count();
  check_plate(construct.plate, problems);
  const bool is_plate_sound = problems.error_count() == before_plate;
  const std::vector<bool> screws_can_be_placed = check_screws(construct, problems);
  const std::vector<bool> holds_can_be_placed = check_temporary(construct, problems);
  check_steps(construct, problems);

  const auto before_fracture = problems.error_count();
  check_fracture(construct, problems);
  if (is_bone_sound && problems.error_count() == before_fracture)
    check_fracture_in_bone(construct.fracture, *bone_shape, problems);
  const bool is_fracture_sound = problems.error_count() == before_fracture;

  check_plate_system(construct.plate, problems);
  check_prebend(construct.plate, problems);
  check_metal(construct.plate.material, "plate.metal", problems);
  if (construct.fracture.tissue) check_tissue(*construct.fracture.tissue, "fracture.filling", problems);
  check_contact(construct.contact, problems);
  check_loads(construct, problems);
  check_healing(construct, problems);
  check_stock(construct.stock, problems);
  check_layouts(construct, problems);
  check_mesh_density(construct.mesh, problems);
  if (is_bone_sound && is_plate_sound)
    check_together(construct, *bone_shape, is_fracture_sound, screws_can_be_placed, holds_can_be_placed, problems);
  return problems.errors_first();
}

}  // namespace gapstrain::models
