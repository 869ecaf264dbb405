#include "models/assembly/prepared_bodies.h"

#include "models/assembly/load_setup.h"
#include "models/assembly/memory_need.h"
#include "solver/bodies/stress.h"

#include <fmt/format.h>

#include <cmath>
#include <future>
#include <utility>

namespace gapstrain::models {

namespace {

using solver::Shell;

PlannedScrew plan_screw(const Screw& screw, std::size_t number, const Construct& construct,
                        const PlateShape& plate_shape, const BoneShape& bone_shape) {
  const Length slide = slide_along(screw, construct.plate, plate_shape, construct.fracture.position);
  PlannedScrew planned;
  planned.screw = screw;
  planned.placement = place_screw(construct.plate, plate_shape, bone_shape, screw, slide);
  planned.slide = slide.value();
  if (screw.kind != ScrewKind::lag || screw.entry) planned.near_spot = fmt::format("{}-near", number);
  if (screw.cortices == 2) planned.far_spot = fmt::format("{}-far", number);
  return planned;
}

Shell plate_shell(const Construct& construct, const PlateMesh& mesh) {
  const Metal& metal = construct.plate.material;
  return {mesh.mesh, solver::isotropic_shell(metal.youngs_modulus.value(), metal.poissons_ratio)};
}

Shell bone_shell(const Construct& construct, const Fragment& fragment) {
  const CorticalBone& cortex = construct.bone.cortex;
  return {fragment.mesh,
          solver::orthotropic_shell(cortex.longitudinal_modulus.value(), cortex.transverse_modulus.value(),
                                    cortex.poissons_ratio_lt, cortex.shear_modulus_lt.value(),
                                    cortex.shear_modulus_lr.value(), cortex.shear_modulus_tr.value())};
}

BuiltBody build(const std::string& name, const Shell& shell, const PortList& ports,
                const std::vector<solver::SparseMatrix>& probes) {
  BuiltBody built;
  built.name = name;
  built.body = std::make_shared<const solver::Body>(shell);
  built.ports = std::make_shared<const solver::Ports>(solver::join_ports(shell.unknowns(), ports.ports()));
  built.condensed = std::make_shared<const solver::Condensed>(built.body->condense(*built.ports, probes));
  return built;
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
  return screw;
}

// What of a construct its bodies' meshes and ports depend on: whatever is not named here does.
struct Geometry {
  Bone bone;
  Plate plate;
  std::vector<double> bone_ratios;
  std::vector<Screw> candidates;
  std::vector<TemporaryHold> temporary;
  Fracture fracture;
  std::vector<double> rollers;
  MeshDensity mesh;
  bool operator==(const Geometry&) const = default;
};

Geometry geometry_of(const Construct& construct, const std::vector<Screw>& candidates) {
  Geometry geometry{construct.bone,      construct.plate,    ratios(construct.bone.cortex),  {},
                    construct.temporary, construct.fracture, roller_places(construct.loads), construct.mesh};
  geometry.bone.name = "";
  geometry.bone.cortex = {};
  geometry.plate.material = {};
  geometry.plate.material.poissons_ratio = construct.plate.material.poissons_ratio;
  geometry.plate.prebend = 0.0 * mm;
  geometry.fracture.tissue.reset();
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
                                      const PlateShape& plate_shape, const BoneShape& bone_shape) {
  std::vector<PlannedScrew> planned;
  for (const auto& screw : candidates)
    planned.push_back(plan_screw(screw, planned.size(), construct, plate_shape, bone_shape));
  for (const auto& hold : construct.temporary)
    if (hold.kind == HoldKind::wire)
      planned.push_back(plan_screw(wire_as_screw(hold, construct.plate.material), planned.size(), construct,
                                   plate_shape, bone_shape));
  return planned;
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
  result.plate.material.youngs_modulus = other.plate.material.youngs_modulus;
  return result;
}

std::array<BuiltBody, 3> bodies_of(const PreparedBodies& prepared, const Construct& construct) {
  const double plate = construct.plate.material.youngs_modulus / prepared.construct.plate.material.youngs_modulus;
  const double bone =
      construct.bone.cortex.longitudinal_modulus / prepared.construct.bone.cortex.longitudinal_modulus;
  return {scaled(prepared.bodies[plate_body], plate, true), scaled(prepared.bodies[proximal_body], bone, false),
          scaled(prepared.bodies[distal_body], bone, false)};
}

std::shared_ptr<const PreparedBodies> prepare_bodies(const Construct& construct,
                                                     const std::vector<Screw>& candidates,
                                                     const std::function<void(const std::string&)>& progress) {
  const auto stage = [&](const std::string& text) {
    if (progress) progress(text);
  };
  require_memory(construct, candidates.size());
  auto prepared = std::make_shared<PreparedBodies>();
  prepared->construct = construct;
  prepared->candidates = candidates;
  prepared->bone_shape = std::make_shared<const BoneShape>(construct.bone, construct.plate.aspect);
  prepared->plate_shape = std::make_shared<const PlateShape>(construct.plate, *prepared->bone_shape);
  const BoneShape& bone_shape = *prepared->bone_shape;
  const PlateShape& plate_shape = *prepared->plate_shape;
  PortWishes& wishes = prepared->wishes;
  wishes.screws = plan_screws(construct, candidates, plate_shape, bone_shape);
  wishes.rollers = roller_places(construct.loads);
  {
    const mesh::GmshSession session;
    stage("meshing the plate");
    prepared->plate_mesh = mesh_plate(session, construct, plate_shape);
    prepared->plate_sample = sample_plate(prepared->plate_mesh, construct.plate,
                                          plate_shape.along_at(construct.fracture.position.value()));
    stage("meshing the bone");
    prepared->fragments = mesh_fragments(session, construct, bone_shape, wishes.screws, wishes.rollers);
  }

  const mesh::BesideMeshing no_meshing_meanwhile;
  stage("factoring the bodies");
  const FractureEdge &proximal = prepared->fragments.proximal.edge, &distal = prepared->fragments.distal.edge;
  const Shell plate = plate_shell(construct, prepared->plate_mesh);
  const std::array<Shell, 2> bone = {bone_shell(construct, prepared->fragments.proximal),
                                     bone_shell(construct, prepared->fragments.distal)};
  wishes.gap = gap_spots(bone[0], proximal, bone[1], distal, construct.fracture.obliquity.value());
  wishes.underside =
      underside_spots(construct, plate_shape, bone_shape, plate, prepared->plate_mesh, {&bone[0], &bone[1]});
  for (const auto& hold : construct.temporary)
    if (hold.kind != HoldKind::wire)
      wishes.clamps.push_back(clamp_tips(hold, construct, plate_shape, bone_shape, {&plate, &bone[0], &bone[1]}));
  auto ports = std::make_unique<const PortBook>(wishes, construct, plate_shape, bone_shape,
                                                std::array<const Shell*, 3>{&plate, &bone[0], &bone[1]});

  auto plate_job = std::async(std::launch::async, [&] {
    return build("plate", plate, ports->ports(plate_body),
                 {solver::node_stress_rows(plate, prepared->plate_sample.nodes, 1.0),
                  solver::node_stress_rows(plate, prepared->plate_sample.nodes, -1.0)});
  });
  auto proximal_job = std::async(std::launch::async, [&] {
    return build("proximal fragment", bone[0], ports->ports(proximal_body), {edge_motion_rows(bone[0], proximal)});
  });
  prepared->bodies[distal_body] =
      build("distal fragment", bone[1], ports->ports(distal_body), {edge_motion_rows(bone[1], distal)});
  prepared->bodies[proximal_body] = proximal_job.get();
  prepared->bodies[plate_body] = plate_job.get();
  prepared->ports = std::move(ports);
  return prepared;
}

}  // namespace gapstrain::models
