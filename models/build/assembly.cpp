#include "models/build/assembly.h"

#include "models/build/body_ports.h"
#include "models/build/gap_links.h"
#include "solver/bodies/stress.h"

#include <fmt/format.h>

#include <future>
#include <utility>

namespace gapstrain::models {

namespace {

using solver::Shell;

std::vector<PlannedScrew> plan_screws(const Construct& construct, const std::vector<Screw>& candidates,
                                      const PlateShape& plate_shape, const BoneShape& bone_shape) {
  std::vector<PlannedScrew> planned;
  for (const auto& screw : candidates) {
    const auto number = planned.size();
    planned.push_back({screw,
                       place_screw(construct.plate, plate_shape, bone_shape, screw.hole, screw.tilt_along,
                                   screw.tilt_across, screw.cortices),
                       fmt::format("{}-near", number), fmt::format("{}-far", number)});
  }
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
  built.body = std::make_unique<solver::Body>(shell);
  built.ports = solver::join_ports(shell.unknowns(), ports.ports());
  built.condensed = built.body->condense(built.ports, probes);
  return built;
}

AssembledLoad assemble_load(const LoadSetup& setup, std::vector<solver::Link>& links,
                            const std::array<BuiltBody, 3>& bodies) {
  AssembledLoad load;
  load.name = setup.name;
  for (const auto& support : setup.supports) {
    load.supports.push_back(static_cast<int>(links.size()));
    links.push_back(support);
  }
  for (const auto& body : bodies)
    load.forces.push_back(Eigen::MatrixXd::Zero(body.condensed.compliance.rows(), 1));
  for (const auto& force : setup.forces)
    load.forces[static_cast<std::size_t>(force.place.body)].middleRows<6>(force.place.column) += force.force;
  return load;
}

}  // namespace

std::vector<int> Assembly::active_links(const std::vector<int>& chosen, const AssembledLoad& load) const {
  std::vector<int> active;
  for (const int screw : chosen) {
    const auto& links = screws[static_cast<std::size_t>(screw)].links;
    active.insert(active.end(), links.begin(), links.end());
  }
  active.insert(active.end(), tissue_links.begin(), tissue_links.end());
  active.insert(active.end(), load.supports.begin(), load.supports.end());
  return active;
}

Assembly assemble(const Construct& construct, const std::vector<Screw>& candidates,
                  const std::function<void(const std::string&)>& progress) {
  const auto stage = [&](const std::string& text) {
    if (progress) progress(text);
  };
  Assembly assembly;
  assembly.construct = construct;
  assembly.bone_shape = std::make_unique<BoneShape>(construct.bone, construct.plate.aspect);
  assembly.plate_shape = std::make_unique<PlateShape>(construct.plate, *assembly.bone_shape);
  const auto planned = plan_screws(construct, candidates, *assembly.plate_shape, *assembly.bone_shape);
  const auto rollers = roller_places(construct.loads);

  // Gmsh works on one mesh at a time; what is meshed already is factored meanwhile.
  const mesh::GmshSession session;
  stage("meshing the plate");
  assembly.plate_mesh = mesh_plate(session, construct, *assembly.plate_shape);
  assembly.plate_sample = sample_plate(*assembly.plate_mesh.mesh);
  PortList plate_ports;
  auto plate_job = std::async(std::launch::async, [&] {
    const Shell shell = plate_shell(construct, assembly.plate_mesh);
    for (const auto& screw : planned) {
      const std::string name = fmt::format("hole:{}", screw.screw.hole);
      if (!plate_ports.has(name))
        plate_ports.add(name, hole_port(shell, construct, *assembly.plate_shape, screw.screw.hole));
    }
    return build("plate", shell, plate_ports,
                 {solver::node_stress_rows(shell, assembly.plate_sample, 1.0),
                  solver::node_stress_rows(shell, assembly.plate_sample, -1.0)});
  });

  stage("meshing the bone");
  assembly.fragments = mesh_fragments(session, construct, *assembly.bone_shape, planned, rollers);
  stage("factoring the bodies");
  const std::array<const Fragment*, 2> fragments = {&assembly.fragments.proximal, &assembly.fragments.distal};
  const std::array<Shell, 2> shells = {bone_shell(construct, *fragments[0]), bone_shell(construct, *fragments[1])};
  const std::array<Eigen::Vector3d, 2> end_centres = {
      assembly.bone_shape->section(0.0).centre,
      assembly.bone_shape->section(assembly.bone_shape->length()).centre};

  std::vector<GapSpot> spots;
  if (construct.fracture.tissue)
    spots = gap_spots(shells[0], fragments[0]->edge, shells[1], fragments[1]->edge,
                      construct.fracture.obliquity.value());

  std::array<PortList, 2> bone_ports;
  const auto bone_job = [&](std::size_t f) {
    const Shell& shell = shells[f];
    const auto& groups = shell.mesh->groups;
    for (const auto& screw : planned) {
      const double radius = screw.screw.size.core_diameter.value() / 2.0;
      if (groups.contains("spot:" + screw.near_spot))
        bone_ports[f].add(screw.near_spot,
                          spot_port(shell, screw.near_spot, screw.placement.bone->near.middle, radius));
      if (groups.contains("spot:" + screw.far_spot))
        bone_ports[f].add(screw.far_spot,
                          spot_port(shell, screw.far_spot, screw.placement.bone->far.middle, radius));
    }
    bone_ports[f].add("end", ring_port(shell, "end", end_centres[f]));
    for (std::size_t k = 0; k < rollers.size(); ++k) {
      const std::string group = fmt::format("section:{}", k);
      if (groups.contains(group))
        bone_ports[f].add(group, ring_port(shell, group, assembly.bone_shape->section(rollers[k]).centre));
    }
    for (std::size_t s = 0; s < spots.size(); ++s)
      bone_ports[f].add(fmt::format("gap:{}", s), f == 0 ? spots[s].proximal : spots[s].distal);
    return build(f == 0 ? "proximal fragment" : "distal fragment", shell, bone_ports[f],
                 {edge_motion_rows(shell, fragments[f]->edge)});
  };
  auto proximal_job = std::async(std::launch::async, bone_job, 0U);
  assembly.bodies[distal_body] = bone_job(1);
  assembly.bodies[proximal_body] = proximal_job.get();
  assembly.bodies[plate_body] = plate_job.get();

  const auto fragment_of = [&](const std::string& name) { return bone_ports[0].has(name) ? 0U : 1U; };
  const auto bone_place = [&](const std::string& name) -> PortPlace {
    const auto f = fragment_of(name);
    return {f == 0 ? proximal_body : distal_body, bone_ports[f].column(name)};
  };

  std::vector<solver::Link> links;
  const auto add = [&](solver::Link link) {
    links.push_back(std::move(link));
    return static_cast<int>(links.size()) - 1;
  };
  for (const auto& screw : planned) {
    const auto& bone = *screw.placement.bone;
    const PlateHole& hole = construct.plate.holes[static_cast<std::size_t>(screw.screw.hole - 1)];
    const auto wall = [](const WallCrossing& crossing) { return (crossing.outer - crossing.inner).norm(); };
    CandidateScrew candidate;
    candidate.planned = screw;
    candidate.model = model_screw(screw.screw, screw.placement, construct.plate,
                                  assembly.plate_shape->thickness(hole.position.value()), hole, wall(bone.near),
                                  wall(bone.far), construct.bone.cortex);
    const PortPlace head{plate_body, plate_ports.column(fmt::format("hole:{}", screw.screw.hole))};
    const PortPlace near = bone_place(screw.near_spot);
    candidate.near_body = near.body;
    const std::string& label = screw.screw.label;
    candidate.links.push_back(add(plug_link(label + " head", candidate.model.plug, head)));
    candidate.links.push_back(
        add(shaft_link(label + " to near cortex", candidate.model.head_to_near, head, near)));
    if (candidate.model.near_to_far) {
      const PortPlace far = bone_place(screw.far_spot);
      candidate.far_body = far.body;
      candidate.links.push_back(
          add(shaft_link(label + " to far cortex", *candidate.model.near_to_far, near, far)));
    }
    assembly.screws.push_back(std::move(candidate));
  }

  const Eigen::Vector3d normal = cut_normal(construct.fracture);
  for (std::size_t s = 0; s < spots.size(); ++s) {
    const std::string name = fmt::format("gap:{}", s);
    const Eigen::MatrixXd same = Eigen::MatrixXd::Identity(3, 3);
    assembly.tissue_links.push_back(
        add({name,
             {{distal_body, bone_ports[1].column(name), same}, {proximal_body, bone_ports[0].column(name), -same}},
             tissue_flexibility(*construct.fracture.tissue, spots[s].area,
                                construct.fracture.gap.value() * normal.x(), normal),
             Eigen::VectorXd::Zero(3)}));
  }

  assembly.load_ports.proximal_end = {bone_place("end"), end_centres[0]};
  assembly.load_ports.distal_end = {{distal_body, bone_ports[1].column("end")}, end_centres[1]};
  for (std::size_t k = 0; k + 3 < rollers.size(); k += 4) {
    std::array<Ring, 4> rings;
    for (std::size_t r = 0; r < 4; ++r)
      rings[r] = {bone_place(fmt::format("section:{}", k + r)),
                  assembly.bone_shape->section(rollers[k + r]).centre};
    assembly.load_ports.rollers.push_back(rings);
  }
  for (const auto& setup : set_up_loads(construct.loads, assembly.load_ports))
    assembly.loads.push_back(assemble_load(setup, links, assembly.bodies));
  const auto unit = unit_loads(assembly.load_ports);
  for (std::size_t k = 0; k < unit.size(); ++k)
    assembly.stiffness_loads[k] = assemble_load(unit[k], links, assembly.bodies);

  std::vector<const solver::Condensed*> condensed;
  for (const auto& body : assembly.bodies) condensed.push_back(&body.condensed);
  assembly.system = std::make_unique<solver::System>(std::move(condensed), std::move(links));
  return assembly;
}

}  // namespace gapstrain::models
