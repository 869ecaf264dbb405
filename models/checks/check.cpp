#include "models/checks/checks.h"

#include <fmt/format.h>

#include <cmath>

namespace gapstrain::models {

namespace {

// Lists may be of any length, what is calculated is not.
bool check_counts(const Construct& construct, ProblemList& problems) {
  if (construct.plates.size() != 1)
    problems.error("plate", fmt::format("There are {} plates; a construct has one.", construct.plates.size()));
  if (construct.fractures.size() != 1)
    problems.error("fracture",
                   fmt::format("There are {} fractures; a construct has one.", construct.fractures.size()));
  return problems.error_count() == 0;
}

// What can only be asked once both bone and plate have a shape.
void check_together(const Construct& construct, const BoneShape& bone_shape, bool is_fracture_sound,
                    const std::vector<bool>& screws_can_be_placed, const std::vector<bool>& holds_can_be_placed,
                    ProblemList& problems) {
  const PlateShape plate_shape(only(construct.plates), bone_shape);
  check_plate_on_bone(only(construct.plates), plate_shape, bone_shape, problems);
  const auto placed =
      check_crossings(construct, screws_can_be_placed, holds_can_be_placed, plate_shape, bone_shape, problems);
  check_screw_distances(placed, bone_shape, problems);
  check_beside_plate(placed, plate_shape, only(construct.plates), problems);
  if (!is_fracture_sound) return;
  check_screws_and_fracture(placed, taken_out(construct), only(construct.fractures), bone_shape, problems);
  check_load_places(construct, placed, bone_shape, problems);
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
  if (!check_counts(construct, problems)) return problems.errors_first();
  check_bone(construct.bone, problems);
  std::optional<BoneShape> bone_shape;
  if (problems.error_count() == 0) {
    bone_shape.emplace(construct.bone, only(construct.plates).aspect);
    check_bone_surface(construct.bone, *bone_shape, problems);
  }
  const bool is_bone_sound = problems.error_count() == 0;
  check_cortex(construct.bone.cortex, problems);
  check_body_mass(construct, problems);

  const auto before_plate = problems.error_count();
  check_plate(only(construct.plates), problems);
  const bool is_plate_sound = problems.error_count() == before_plate;
  const std::vector<bool> screws_can_be_placed = check_screws(construct, problems);
  const std::vector<bool> holds_can_be_placed = check_temporary(construct, problems);
  check_steps(construct, problems);

  const auto before_fracture = problems.error_count();
  check_fracture(construct, problems);
  if (is_bone_sound && problems.error_count() == before_fracture)
    check_fracture_in_bone(only(construct.fractures), *bone_shape, problems);
  const bool is_fracture_sound = problems.error_count() == before_fracture;

  check_plate_system(only(construct.plates), problems);
  check_prebend(only(construct.plates), problems);
  check_metal(only(construct.plates).material, "plate.metal", problems);
  if (only(construct.fractures).tissue)
    check_tissue(*only(construct.fractures).tissue, "fracture.filling", problems);
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
