#include "models/build/assembly.h"

#include "models/build/port_book.h"
#include "solver/bodies/stress.h"

#include <fmt/format.h>

#include <algorithm>
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

BuiltBody build(const std::string& name, std::unique_ptr<solver::Body> body, const PortList& ports,
                const std::vector<solver::SparseMatrix>& probes) {
  BuiltBody built;
  built.name = name;
  built.body = std::move(body);
  const Shell& shell = built.body->shell();
  built.ports = solver::join_ports(shell.unknowns(), ports.ports());
  built.condensed = std::make_unique<const solver::Condensed>(built.body->condense(built.ports, probes));
  return built;
}

class LinkList {
 public:
  int add(solver::Link link) {
    links_.push_back(std::move(link));
    return static_cast<int>(links_.size()) - 1;
  }
  solver::ContactPair add_pair(PairLinks pair) {
    const int normal = add(std::move(pair.normal));
    return {normal, add(std::move(pair.tangent))};
  }
  std::vector<solver::Link> take() { return std::move(links_); }

 private:
  std::vector<solver::Link> links_;
};

CandidateScrew link_screw(const Assembly& assembly, const PlannedScrew& planned, bool is_wire,
                          const PortBook& ports, LinkList& links) {
  const auto wall = [](const WallCrossing& crossing) { return (crossing.outer - crossing.inner).norm(); };
  const Screw& screw = planned.screw;
  const ScrewPlacement& placement = planned.placement;
  const auto& holes = assembly.construct.plate.holes;
  const double along = screw.hole > 0 ? holes[static_cast<std::size_t>(screw.hole - 1)].position.value() : 0.0;
  CandidateScrew candidate;
  candidate.planned = planned;
  candidate.model = model_screw(screw, placement, assembly.construct, assembly.plate_shape->thickness(along),
                                wall(placement.bone->near), wall(placement.bone->far));
  const PortPlace seat = screw.hole > 0 ? ports.hole(screw.hole) : ports.bone(planned.near_spot);
  const PortPlace thread = ports.bone(screw.kind == ScrewKind::lag ? planned.far_spot : planned.near_spot);
  candidate.seat =
      screw.hole > 0 ? assembly.plate_shape->mid_surface(along, 0.0).position : placement.bone->near.middle;
  if (candidate.model.plug) {
    candidate.plug = links.add(plug_link(screw.label + " head", *candidate.model.plug, seat));
    candidate.head = links.add(shaft_link(screw.label + " shaft", candidate.model.head_to_thread, seat, thread));
    candidate.links = {*candidate.plug, candidate.head};
  } else {
    candidate.head =
        links.add(ball_link(screw.label + " shaft", candidate.model, seat, candidate.seat, thread, is_wire));
    candidate.links = {candidate.head};
  }
  if (candidate.model.near_to_far) {
    candidate.far = links.add(shaft_link(screw.label + " to far cortex", *candidate.model.near_to_far, thread,
                                         ports.bone(planned.far_spot)));
    candidate.links.push_back(*candidate.far);
  }
  return candidate;
}

TissueFilling link_tissue(const Tissue& tissue, const Fracture& fracture, const PortWishes& wishes,
                          const PortBook& ports, LinkList& links) {
  const Eigen::Vector3d normal = cut_normal(fracture);
  const Eigen::MatrixXd same = Eigen::MatrixXd::Identity(3, 3);
  TissueFilling filling{tissue, {}};
  for (std::size_t k = 0; k < wishes.gap.size(); ++k) {
    const auto [proximal, distal] = ports.gap(k);
    filling.links.push_back(
        links.add({tissue.name,
                   {{distal.body, distal.column, same}, {proximal.body, proximal.column, -same}},
                   tissue_flexibility(tissue, wishes.gap[k].area, fracture.gap.value() * normal.x(), normal),
                   Eigen::VectorXd::Zero(3)}));
  }
  return filling;
}

void link_tissues(Assembly& assembly, const PortWishes& wishes, const PortBook& ports, LinkList& links) {
  const Construct& construct = assembly.construct;
  const auto add = [&](const Tissue& tissue) {
    const auto is_same = [&](const TissueFilling& filling) { return filling.is_of(tissue); };
    if (std::none_of(assembly.tissues.begin(), assembly.tissues.end(), is_same))
      assembly.tissues.push_back(link_tissue(tissue, construct.fracture, wishes, ports, links));
  };
  if (construct.fracture.tissue) add(*construct.fracture.tissue);
  for (const auto& step : construct.steps)
    if (step.tissue) add(*step.tissue);
}

void link_pairs(Assembly& assembly, const PortWishes& wishes, const PortBook& ports, LinkList& links) {
  const Construct& construct = assembly.construct;
  const Eigen::Vector3d normal = cut_normal(construct.fracture);
  const double gap = construct.fracture.gap.value() * normal.x();
  for (std::size_t k = 0; k < wishes.gap.size(); ++k) {
    const GapSpot& spot = wishes.gap[k];
    const auto [proximal, distal] = ports.gap(k);
    assembly.pairs.push_back(
        links.add_pair(pair_links("fracture", proximal, distal, normal, gap, spot.area, construct.bone.cortex)));
    assembly.face.push_back({spot.around, spot.outer, spot.area});
  }
  for (std::size_t k = 0; k < wishes.underside.size(); ++k) {
    const UndersideSpot& spot = wishes.underside[k];
    const auto [bone, plate] = ports.underside(k, spot.fragment);
    assembly.pairs.push_back(links.add_pair(
        pair_links("underside", bone, plate, spot.normal, spot.gap, spot.area, construct.bone.cortex)));
    assembly.underside.push_back({spot.fragment, spot.along, spot.gap});
  }
}

void link_holds(Assembly& assembly, const PortWishes& wishes, const PortBook& ports, LinkList& links) {
  std::size_t wire =
      wishes.screws.size() - static_cast<std::size_t>(std::count_if(
                                 assembly.construct.temporary.begin(), assembly.construct.temporary.end(),
                                 [](const TemporaryHold& hold) { return hold.kind == HoldKind::wire; }));
  std::size_t clamp = 0;
  for (const auto& hold : assembly.construct.temporary) {
    Hold entry;
    entry.hold = hold;
    if (hold.kind == HoldKind::wire) {
      const PlannedScrew& planned = wishes.screws[wire++];
      entry.wire = link_screw(assembly, planned, true, ports, links);
      entry.links = entry.wire->links;
      entry.ends = {planned.placement.head_top, planned.placement.tip};
    } else {
      const auto& tips = wishes.clamps[clamp];
      entry.links = {links.add(clamp_link(hold.label, tips, ports.clamp(clamp, tips)))};
      entry.ends = {tips[0].port.centre, tips[1].port.centre};
      ++clamp;
    }
    assembly.holds.push_back(std::move(entry));
  }
}

// `along` of a hole is its own, of other ports that of their place.
std::vector<PlatePort> find_plate_ports(const Construct& construct, const PlateShape& shape,
                                        const PortBook& book) {
  std::vector<PlatePort> found;
  Eigen::Index column = 0;
  for (const auto& port : book.ports(plate_body).ports()) {
    found.push_back({shape.along_at(port.centre.x()), port.centre, column, port.motions()});
    column += port.motions();
  }
  for (std::size_t hole = 0; hole < construct.plate.holes.size(); ++hole) {
    const std::string name = fmt::format("hole:{}", hole + 1);
    if (!book.ports(plate_body).has(name)) continue;
    const Eigen::Index first = book.ports(plate_body).column(name);
    for (auto& port : found)
      if (port.column == first) port.along = construct.plate.holes[hole].position.value();
  }
  return found;
}

LoadPorts find_load_ports(const BoneShape& shape, const std::vector<double>& rollers, const PortBook& ports) {
  LoadPorts found;
  found.proximal_end = {ports.end(proximal_body), shape.section(0.0).centre};
  found.distal_end = {ports.end(distal_body), shape.section(shape.length()).centre};
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

void link_everything(Assembly& assembly, const PortWishes& wishes, std::size_t candidates, const PortBook& ports) {
  LinkList links;
  for (std::size_t k = 0; k < candidates; ++k)
    assembly.screws.push_back(link_screw(assembly, wishes.screws[k], false, ports, links));
  link_tissues(assembly, wishes, ports, links);
  link_pairs(assembly, wishes, ports, links);
  link_holds(assembly, wishes, ports, links);
  assembly.plate_ports = find_plate_ports(assembly.construct, *assembly.plate_shape, ports);
  assembly.load_ports = find_load_ports(*assembly.bone_shape, wishes.rollers, ports);
  assembly.on_the_table = assemble_load(hold_proximal_end(assembly.load_ports), assembly.bodies, links);
  for (const auto& setup : set_up_loads(assembly.construct.loads, assembly.load_ports))
    assembly.loads.push_back(assemble_load(setup, assembly.bodies, links));
  const auto unit = unit_loads(assembly.load_ports);
  for (std::size_t k = 0; k < unit.size(); ++k)
    assembly.stiffness_loads[k] = assemble_load(unit[k], assembly.bodies, links);
  std::vector<const solver::Condensed*> condensed;
  for (const auto& body : assembly.bodies) condensed.push_back(body.condensed.get());
  assembly.system = std::make_unique<solver::System>(std::move(condensed), links.take());
}

}  // namespace

Assembly assemble(const Construct& construct, const std::vector<Screw>& candidates,
                  const std::function<void(const std::string&)>& progress) {
  const auto stage = [&](const std::string& text) {
    if (progress) progress(text);
  };
  Assembly assembly;
  assembly.construct = construct;
  assembly.bone_shape = std::make_unique<BoneShape>(construct.bone, construct.plate.aspect);
  assembly.plate_shape = std::make_unique<PlateShape>(construct.plate, *assembly.bone_shape);
  const BoneShape& bone_shape = *assembly.bone_shape;
  const PlateShape& plate_shape = *assembly.plate_shape;
  PortWishes wishes;
  wishes.screws = plan_screws(construct, candidates, plate_shape, bone_shape);
  wishes.rollers = roller_places(construct.loads);

  // Nothing else runs beside Gmsh: its meshes depend on where in memory things lie, and so on other threads.
  const mesh::GmshSession session;
  stage("meshing the plate");
  assembly.plate_mesh = mesh_plate(session, construct, plate_shape);
  assembly.plate_sample = sample_plate(*assembly.plate_mesh.mesh);
  stage("meshing the bone");
  assembly.fragments = mesh_fragments(session, construct, bone_shape, wishes.screws, wishes.rollers);

  stage("factoring the bodies");
  const FractureEdge &proximal = assembly.fragments.proximal.edge, &distal = assembly.fragments.distal.edge;
  const Shell plate = plate_shell(construct, assembly.plate_mesh);
  const std::array<Shell, 2> bone = {bone_shell(construct, assembly.fragments.proximal),
                                     bone_shell(construct, assembly.fragments.distal)};
  wishes.gap = gap_spots(bone[0], proximal, bone[1], distal, construct.fracture.obliquity.value());
  wishes.underside =
      underside_spots(construct, plate_shape, bone_shape, plate, assembly.plate_mesh, {&bone[0], &bone[1]});
  for (const auto& hold : construct.temporary)
    if (hold.kind != HoldKind::wire)
      wishes.clamps.push_back(clamp_tips(hold, construct, plate_shape, bone_shape, {&plate, &bone[0], &bone[1]}));
  const PortBook ports(wishes, construct, plate_shape, bone_shape, {&plate, &bone[0], &bone[1]});

  auto plate_job = std::async(std::launch::async, [&] {
    return build("plate", std::make_unique<solver::Body>(plate), ports.ports(plate_body),
                 {solver::node_stress_rows(plate, assembly.plate_sample, 1.0),
                  solver::node_stress_rows(plate, assembly.plate_sample, -1.0)});
  });
  auto proximal_job = std::async(std::launch::async, [&] {
    return build("proximal fragment", std::make_unique<solver::Body>(bone[0]), ports.ports(proximal_body),
                 {edge_motion_rows(bone[0], proximal)});
  });
  assembly.bodies[distal_body] = build("distal fragment", std::make_unique<solver::Body>(bone[1]),
                                       ports.ports(distal_body), {edge_motion_rows(bone[1], distal)});
  assembly.bodies[proximal_body] = proximal_job.get();
  assembly.bodies[plate_body] = plate_job.get();
  link_everything(assembly, wishes, candidates.size(), ports);
  return assembly;
}

}  // namespace gapstrain::models
