#include "models/assembly/prepared_bodies.h"

#include "models/assembly/body_numbers.h"
#include "models/assembly/load_setup.h"
#include "solver/elements/shell_material.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace gapstrain::models {

namespace {

using solver::Shell;

Shell plate_shell(const Metal& metal, const PlateMesh& mesh) {
  return {mesh.mesh, solver::isotropic_shell(metal.youngs_modulus.value(), metal.poissons_ratio)};
}

Shell bone_shell(const CorticalBone& cortex, const Fragment& fragment) {
  return {fragment.mesh,
          solver::orthotropic_shell(cortex.longitudinal_modulus.value(), cortex.transverse_modulus.value(),
                                    cortex.poissons_ratio_lt, cortex.shear_modulus_lt.value(),
                                    cortex.shear_modulus_lr.value(), cortex.shear_modulus_tr.value())};
}

std::string near_name(std::size_t number) { return fmt::format("{}-near", number); }
std::string far_name(std::size_t number) { return fmt::format("{}-far", number); }

PlannedScrew plan_screw(const Screw& screw, std::size_t number, const Construct& construct,
                        const std::vector<std::shared_ptr<const PlateShape>>& plate_shapes,
                        const BoneShape& bone_shape) {
  PlannedScrew planned;
  planned.screw = screw;
  planned.placement = place_screw(construct, *plate_shapes[screw.plate], bone_shape, screw);
  if (screw.kind != ScrewKind::lag || screw.entry) planned.near_spot = near_name(number);
  if (screw.cortices == 2) planned.far_spot = far_name(number);
  return planned;
}

double core_radius(const PlannedScrew& planned) { return planned.screw.size.core_diameter.value() / 2.0; }

// Candidates for one hole, of which a construct has one, share the patches of the bone that their shafts pass,
// which its mesh has once, the first one's: shafts as thick as each other, also where one passes up to its radius
// beside the other, as a compression screw does that slides. `assemble` carries its forces over.
void share_spots(std::vector<PlannedScrew>& planned) {
  PlannedScrew& last = planned.back();
  if (last.screw.hole == 0 || !last.placement.bone) return;
  const auto share = [](std::string& spot, const WallCrossing& wall, double radius, const std::string& own_spot,
                        const std::string& other_spot, const WallCrossing& other_wall, double other_radius) {
    constexpr double alike = 1e-9;  // mm
    if (!spot.empty() && other_spot == own_spot && std::abs(radius - other_radius) < alike &&
        (wall.middle - other_wall.middle).norm() < radius)
      spot = other_spot;
  };
  for (std::size_t k = planned.size() - 1; k-- > 0;) {
    const PlannedScrew& other = planned[k];
    if (other.screw.hole != last.screw.hole || other.screw.plate != last.screw.plate || !other.placement.bone)
      continue;
    const BoneCrossing &bone = *last.placement.bone, &other_bone = *other.placement.bone;
    share(last.near_spot, bone.near, last.near_radius(), near_name(k), other.near_spot, other_bone.near,
          other.near_radius());
    share(last.far_spot, bone.far, core_radius(last), far_name(k), other.far_spot, other_bone.far,
          core_radius(other));
  }
}

// Moduli over the first of them, to twelve digits: a construct's are computed ones.
std::vector<double> ratios(const CorticalBone& cortex) {
  std::vector<double> all;
  for (const Stress& modulus :
       {cortex.transverse_modulus, cortex.shear_modulus_lt, cortex.shear_modulus_lr, cortex.shear_modulus_tr})
    all.push_back(std::round(modulus / cortex.longitudinal_modulus * 1e12));
  all.push_back(cortex.poissons_ratio_lt);
  return all;
}

Screw geometry_of(Screw screw) {
  screw.label = screw.size.designation = screw.size.source = "";
  screw.id = ScrewId::none;
  screw.material = {};
  screw.preload.reset();
  screw.insertion_torque.reset();
  screw.size.root_radius.reset();
  screw.interface.reset();
  return screw;
}

// What of a construct its bodies' meshes and ports depend on: whatever is not named here does.
struct Geometry {
  Bone bone;
  std::vector<Plate> plates;
  std::vector<double> bone_ratios;
  std::vector<Screw> candidates;
  std::vector<TemporaryHold> temporary;
  std::vector<Fracture> fractures;
  std::vector<double> rollers;
  std::vector<SurfaceSpot> forces;
  MeshDensity mesh;
  bool has_axes = true;  // ports for second-order effects (axis_ports.h)
  bool operator==(const Geometry&) const = default;
};

Geometry geometry_of(const Construct& construct, const std::vector<Screw>& candidates) {
  Geometry geometry{construct.bone,
                    construct.plates,
                    ratios(construct.bone.cortex),
                    {},
                    construct.temporary,
                    construct.fractures,
                    roller_places(construct.loads),
                    force_spots(construct.loads),
                    construct.mesh,
                    construct.second_order != SecondOrderEffects::never};
  geometry.bone.name = "";
  geometry.bone.cortex = {};
  for (auto& plate : geometry.plates) {
    const double poissons_ratio = plate.material.poissons_ratio;
    plate.material = {};
    plate.material.poissons_ratio = poissons_ratio;
    plate.prebend = 0.0 * mm;
  }
  for (auto& fracture : geometry.fractures) fracture.tissue.reset();
  for (const auto& screw : candidates) geometry.candidates.push_back(geometry_of(screw));
  for (auto& hold : geometry.temporary) {
    hold.label = "";
    hold.force = 0.0 * newton;
  }
  return geometry;
}

// A body of a material that is stiffer all over: it moves less under the same forces, and is as stressed.
BuiltBody scaled(const BuiltBody& built, double stiffness, bool probes_read_stress) {
  if (stiffness == 1.0) return built;
  BuiltBody other = built;
  solver::Condensed condensed = *built.condensed;
  condensed.compliance /= stiffness;
  if (!probes_read_stress)
    for (auto& probe : condensed.probes) probe.of_port_forces /= stiffness;
  other.condensed = std::make_shared<const solver::Condensed>(std::move(condensed));
  other.stiffness = stiffness;
  return other;
}

}  // namespace

std::vector<PlannedScrew> plan_screws(const Construct& construct, const std::vector<Screw>& candidates,
                                      const std::vector<std::shared_ptr<const PlateShape>>& plate_shapes,
                                      const BoneShape& bone_shape) {
  std::vector<PlannedScrew> planned;
  for (const auto& screw : candidates) {
    planned.push_back(plan_screw(screw, planned.size(), construct, plate_shapes, bone_shape));
    share_spots(planned);
  }
  for (const auto& hold : construct.temporary)
    if (hold.kind == HoldKind::wire)
      planned.push_back(plan_screw(wire_as_screw(hold, construct.plates[hold.plate].material), planned.size(),
                                   construct, plate_shapes, bone_shape));
  return planned;
}

PreparedBodies lay_out(const Construct& construct, const std::vector<Screw>& candidates) {
  PreparedBodies laid;
  laid.construct = construct;
  laid.candidates = candidates;
  laid.bone_shape = std::make_shared<const BoneShape>(construct.bone, only(construct.plates).aspect);
  for (const Plate& plate : construct.plates)
    laid.plates.push_back({std::make_shared<const PlateShape>(plate, *laid.bone_shape), {}, {}});
  laid.wishes.screws = plan_screws(construct, candidates, shapes_of(laid.plates), *laid.bone_shape);
  laid.wishes.rollers = roller_places(construct.loads);
  laid.wishes.forces = force_spots(construct.loads);
  laid.fragments.resize(fragment_count(construct));
  laid.bodies.resize(body_count(construct));
  return laid;
}

std::vector<Shell> shells_of(const PreparedBodies& prepared) {
  std::vector<Shell> shells;
  for (std::size_t p = 0; p < prepared.plates.size(); ++p)
    shells.push_back(plate_shell(prepared.construct.plates[p].material, prepared.plates[p].mesh));
  for (const auto& fragment : prepared.fragments)
    shells.push_back(bone_shell(prepared.construct.bone.cortex, fragment));
  return shells;
}

std::vector<std::shared_ptr<const PlateShape>> shapes_of(const std::vector<LaidPlate>& plates) {
  std::vector<std::shared_ptr<const PlateShape>> shapes;
  for (const auto& plate : plates) shapes.push_back(plate.shape);
  return shapes;
}

bool have_same_bodies(const Construct& one, const std::vector<Screw>& candidates_of_one, const Construct& other,
                      const std::vector<Screw>& candidates_of_other) {
  return geometry_of(one, candidates_of_one) == geometry_of(other, candidates_of_other);
}

Construct with_moduli_of(const Construct& construct, const Construct& other) {
  Construct result = construct;
  CorticalBone& cortex = result.bone.cortex;
  const auto shares = ratios(cortex);
  cortex.longitudinal_modulus = other.bone.cortex.longitudinal_modulus;
  std::size_t k = 0;
  for (Stress* modulus :
       {&cortex.transverse_modulus, &cortex.shear_modulus_lt, &cortex.shear_modulus_lr, &cortex.shear_modulus_tr})
    *modulus = shares[k++] / 1e12 * cortex.longitudinal_modulus;
  for (std::size_t p = 0; p < result.plates.size(); ++p)
    result.plates[p].material.youngs_modulus = other.plates[p].material.youngs_modulus;
  return result;
}

std::vector<BuiltBody> bodies_of(const PreparedBodies& prepared, const Construct& construct) {
  std::vector<BuiltBody> bodies;
  for (std::size_t b = 0; b < prepared.bodies.size(); ++b) {
    const bool plate = is_plate(construct, b);
    const double stiffness =
        plate ? construct.plates[b].material.youngs_modulus / prepared.construct.plates[b].material.youngs_modulus
              : construct.bone.cortex.longitudinal_modulus / prepared.construct.bone.cortex.longitudinal_modulus;
    bodies.push_back(scaled(prepared.bodies[b], stiffness, plate));
  }
  return bodies;
}

}  // namespace gapstrain::models
