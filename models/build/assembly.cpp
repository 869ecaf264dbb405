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
  built.condensed = std::make_unique<const solver::Condensed>(built.body->condense(built.ports, probes));
  return built;
}

// Names and places of everything on the bodies that links and loads may take hold of.
struct PortBook {
  PortList plate;
  std::array<PortList, 2> fragments;  // proximal, distal

  PortPlace hole(int number) const { return {plate_body, plate.column(fmt::format("hole:{}", number))}; }
  // A name that only one fragment has.
  PortPlace bone(const std::string& name) const {
    const std::size_t f = fragments[0].has(name) ? 0 : 1;
    return on_fragment(f, name);
  }
  PortPlace on_fragment(std::size_t f, const std::string& name) const {
    return {f == 0 ? proximal_body : distal_body, fragments[f].column(name)};
  }
};

class LinkList {
 public:
  int add(solver::Link link) {
    links_.push_back(std::move(link));
    return static_cast<int>(links_.size()) - 1;
  }
  std::vector<solver::Link> take() { return std::move(links_); }

 private:
  std::vector<solver::Link> links_;
};

PortList plate_ports(const Shell& shell, const Assembly& assembly, const std::vector<PlannedScrew>& planned) {
  PortList ports;
  for (const auto& screw : planned) {
    const std::string name = fmt::format("hole:{}", screw.screw.hole);
    if (!ports.has(name))
      ports.add(name, hole_port(shell, assembly.construct, *assembly.plate_shape, screw.screw.hole));
  }
  return ports;
}

// `f`: 0 proximal, 1 distal. A spot or a roller is a port of the fragment whose mesh has its group.
PortList fragment_ports(std::size_t f, const Shell& shell, const BoneShape& shape,
                        const std::vector<PlannedScrew>& planned, const std::vector<double>& rollers,
                        const std::vector<GapSpot>& spots) {
  PortList ports;
  const auto& groups = shell.mesh->groups;
  const auto add_spot = [&](const PlannedScrew& screw, const std::string& spot, const WallCrossing& wall) {
    if (groups.contains("spot:" + spot))
      ports.add(spot, spot_port(shell, spot, wall.middle, screw.screw.size.core_diameter.value() / 2.0));
  };
  for (const auto& screw : planned) {
    add_spot(screw, screw.near_spot, screw.placement.bone->near);
    add_spot(screw, screw.far_spot, screw.placement.bone->far);
  }
  ports.add("end", ring_port(shell, "end", shape.section(f == 0 ? 0.0 : shape.length()).centre));
  for (std::size_t k = 0; k < rollers.size(); ++k) {
    const std::string group = fmt::format("section:{}", k);
    if (groups.contains(group)) ports.add(group, ring_port(shell, group, shape.section(rollers[k]).centre));
  }
  for (std::size_t s = 0; s < spots.size(); ++s)
    ports.add(fmt::format("gap:{}", s), f == 0 ? spots[s].proximal : spots[s].distal);
  return ports;
}

CandidateScrew link_screw(const Assembly& assembly, const PlannedScrew& planned, const PortBook& ports,
                          LinkList& links) {
  const auto wall = [](const WallCrossing& crossing) { return (crossing.outer - crossing.inner).norm(); };
  const Construct& construct = assembly.construct;
  const Screw& screw = planned.screw;
  const PlateHole& hole = construct.plate.holes[static_cast<std::size_t>(screw.hole - 1)];
  CandidateScrew candidate;
  candidate.planned = planned;
  candidate.model = model_screw(
      screw, planned.placement, construct.plate, assembly.plate_shape->thickness(hole.position.value()), hole,
      wall(planned.placement.bone->near), wall(planned.placement.bone->far), construct.bone.cortex);
  const PortPlace head = ports.hole(screw.hole), near = ports.bone(planned.near_spot);
  candidate.links.push_back(links.add(plug_link(screw.label + " head", candidate.model.plug, head)));
  candidate.links.push_back(
      links.add(shaft_link(screw.label + " to near cortex", candidate.model.head_to_near, head, near)));
  if (candidate.model.near_to_far) {
    const PortPlace far = ports.bone(planned.far_spot);
    candidate.links.push_back(
        links.add(shaft_link(screw.label + " to far cortex", *candidate.model.near_to_far, near, far)));
  }
  return candidate;
}

std::vector<int> link_tissue(const Fracture& fracture, const std::vector<GapSpot>& spots, const PortBook& ports,
                             LinkList& links) {
  const Eigen::Vector3d normal = cut_normal(fracture);
  const Eigen::MatrixXd same = Eigen::MatrixXd::Identity(3, 3);
  std::vector<int> indices;
  for (std::size_t s = 0; s < spots.size(); ++s) {
    const std::string name = fmt::format("gap:{}", s);
    const PortPlace distal = ports.on_fragment(1, name), proximal = ports.on_fragment(0, name);
    indices.push_back(
        links.add({name,
                   {{distal.body, distal.column, same}, {proximal.body, proximal.column, -same}},
                   tissue_flexibility(*fracture.tissue, spots[s].area, fracture.gap.value() * normal.x(), normal),
                   Eigen::VectorXd::Zero(3)}));
  }
  return indices;
}

LoadPorts find_load_ports(const BoneShape& shape, const std::vector<double>& rollers, const PortBook& ports) {
  LoadPorts found;
  found.proximal_end = {ports.on_fragment(0, "end"), shape.section(0.0).centre};
  found.distal_end = {ports.on_fragment(1, "end"), shape.section(shape.length()).centre};
  for (std::size_t k = 0; k + 3 < rollers.size(); k += 4) {
    std::array<Ring, 4> rings;
    for (std::size_t r = 0; r < 4; ++r)
      rings[r] = {ports.bone(fmt::format("section:{}", k + r)), shape.section(rollers[k + r]).centre};
    found.rollers.push_back(rings);
  }
  return found;
}

AssembledLoad assemble_load(const LoadSetup& setup, const std::array<BuiltBody, 3>& bodies, LinkList& links) {
  AssembledLoad load;
  load.name = setup.name;
  for (const auto& support : setup.supports) load.supports.push_back(links.add(support));
  for (const auto& body : bodies)
    load.forces.push_back(Eigen::MatrixXd::Zero(body.condensed->compliance.rows(), 1));
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
  const BoneShape& shape = *assembly.bone_shape;
  const auto planned = plan_screws(construct, candidates, *assembly.plate_shape, shape);
  const auto rollers = roller_places(construct.loads);
  PortBook ports;

  // Gmsh works on one mesh at a time; what is meshed already is factored meanwhile.
  const mesh::GmshSession session;
  stage("meshing the plate");
  assembly.plate_mesh = mesh_plate(session, construct, *assembly.plate_shape);
  assembly.plate_sample = sample_plate(*assembly.plate_mesh.mesh);
  auto plate_job = std::async(std::launch::async, [&] {
    const Shell shell = plate_shell(construct, assembly.plate_mesh);
    ports.plate = plate_ports(shell, assembly, planned);
    return build("plate", shell, ports.plate,
                 {solver::node_stress_rows(shell, assembly.plate_sample, 1.0),
                  solver::node_stress_rows(shell, assembly.plate_sample, -1.0)});
  });
  stage("meshing the bone");
  assembly.fragments = mesh_fragments(session, construct, shape, planned, rollers);

  stage("factoring the bodies");
  const std::array<const Fragment*, 2> fragments = {&assembly.fragments.proximal, &assembly.fragments.distal};
  const std::array<Shell, 2> shells = {bone_shell(construct, *fragments[0]), bone_shell(construct, *fragments[1])};
  std::vector<GapSpot> spots;
  if (construct.fracture.tissue)
    spots = gap_spots(shells[0], fragments[0]->edge, shells[1], fragments[1]->edge,
                      construct.fracture.obliquity.value());
  const auto fragment_job = [&](std::size_t f) {
    ports.fragments[f] = fragment_ports(f, shells[f], shape, planned, rollers, spots);
    return build(f == 0 ? "proximal fragment" : "distal fragment", shells[f], ports.fragments[f],
                 {edge_motion_rows(shells[f], fragments[f]->edge)});
  };
  auto proximal_job = std::async(std::launch::async, fragment_job, 0U);
  assembly.bodies[distal_body] = fragment_job(1);
  assembly.bodies[proximal_body] = proximal_job.get();
  assembly.bodies[plate_body] = plate_job.get();

  LinkList links;
  for (const auto& screw : planned) assembly.screws.push_back(link_screw(assembly, screw, ports, links));
  if (construct.fracture.tissue) assembly.tissue_links = link_tissue(construct.fracture, spots, ports, links);
  assembly.load_ports = find_load_ports(shape, rollers, ports);
  for (const auto& setup : set_up_loads(construct.loads, assembly.load_ports))
    assembly.loads.push_back(assemble_load(setup, assembly.bodies, links));
  const auto unit = unit_loads(assembly.load_ports);
  for (std::size_t k = 0; k < unit.size(); ++k)
    assembly.stiffness_loads[k] = assemble_load(unit[k], assembly.bodies, links);

  std::vector<const solver::Condensed*> condensed;
  for (const auto& body : assembly.bodies) condensed.push_back(body.condensed.get());
  assembly.system = std::make_unique<solver::System>(std::move(condensed), links.take());
  return assembly;
}

}  // namespace gapstrain::models
