#include "models/assembly/assembly.h"

#include "models/assembly/axis_ports.h"
#include "models/assembly/port_book.h"
#include "solver/elements/beam.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace gapstrain::models {

namespace {

class LinkList {
 public:
  int add(solver::Link link) {
    links_.push_back(std::move(link));
    return static_cast<int>(links_.size()) - 1;
  }
  Eigen::Index size_of(int link) const { return links_[static_cast<std::size_t>(link)].size(); }
  void share(solver::SharedFlexibility both) { shared_.push_back(std::move(both)); }
  std::vector<solver::Link> take() { return std::move(links_); }
  std::vector<solver::SharedFlexibility> take_shared() { return std::move(shared_); }

 private:
  std::vector<solver::Link> links_;
  std::vector<solver::SharedFlexibility> shared_;
};

Eigen::Vector3d centre_of(const PortBook& ports, const PortPlace& place) {
  const auto& columns = ports.ports(place.body).columns();
  return std::find_if(columns.begin(), columns.end(),
                      [&](const auto& port) { return port.column == place.column; })
      ->centre;
}

// A shaft that shares a patch with another kind of screw in its hole may pass beside that patch's centre: its
// forces go on acting where it is, `at`, carried to the centre as a rigid wall does.
solver::Link beside_centre(solver::Link link, const PortBook& ports, const PortPlace& port,
                           const Eigen::Vector3d& at) {
  constexpr double least = 1e-9;  // mm
  const Eigen::Vector3d centre = centre_of(ports, port);
  if ((at - centre).norm() < least) return link;
  for (auto& end : link.ends)
    if (end.body == port.body && end.column == port.column)
      end.transfer = solver::rigid_transfer(centre, at).transpose() * end.transfer;
  return link;
}

CandidateScrew link_screw(const Assembly& assembly, const PlannedScrew& planned, bool is_wire,
                          const PortBook& ports, LinkList& links) {
  const auto wall = [](const WallCrossing& crossing) { return (crossing.outer - crossing.inner).norm(); };
  const Screw& screw = planned.screw;
  const ScrewPlacement& placement = planned.placement;
  const auto& holes = assembly.construct.plates[screw.plate].holes;
  const PlateShape& plate = *assembly.plates[screw.plate].shape;
  const double along = screw.hole > 0 ? holes[static_cast<std::size_t>(screw.hole - 1)].position.value() : 0.0;
  CandidateScrew candidate;
  candidate.planned = planned;
  candidate.model = model_screw(screw, placement, assembly.construct, plate.thickness(along),
                                wall(placement.bone->near), wall(placement.bone->far));
  const PortPlace seat = screw.hole > 0 ? ports.hole(screw.plate, screw.hole) : ports.named(planned.near_spot);
  const PortPlace thread = ports.named(screw.kind == ScrewKind::lag ? planned.far_spot : planned.near_spot);
  candidate.seat = screw.hole > 0 ? plate.mid_surface(along, 0.0).position : placement.bone->near.middle;
  if (candidate.model.plug) {
    candidate.plug = links.add(plug_link(screw.label + " head", *candidate.model.plug, seat));
    candidate.head =
        links.add(beside_centre(shaft_link(screw.label + " shaft", candidate.model.head_to_thread, seat, thread),
                                ports, thread, candidate.model.head_to_thread.to));
    candidate.links = {*candidate.plug, candidate.head};
  } else {
    candidate.head = links.add(
        beside_centre(ball_link(screw.label + " shaft", candidate.model, seat, candidate.seat, thread, is_wire),
                      ports, thread, candidate.model.head_to_thread.to));
    candidate.links = {candidate.head};
  }
  if (candidate.model.near_to_far) {
    const PortPlace far = ports.named(planned.far_spot);
    const ShaftSegment& segment = *candidate.model.near_to_far;
    candidate.far = links.add(beside_centre(
        beside_centre(shaft_link(screw.label + " to far cortex", segment, thread, far), ports, far, segment.to),
        ports, thread, segment.from));
    candidate.links.push_back(*candidate.far);
    const Eigen::Index head_rows = links.size_of(candidate.head);
    if (auto give = shared_give(candidate.model, head_rows))
      links.share({candidate.head, *candidate.far, std::move(*give)});
  }
  return candidate;
}

// Of each spot of the gap, proximal and distal.
std::vector<std::array<SpotPlace, 2>> gap_places(const PortWishes& wishes, const PortBook& ports) {
  std::vector<std::array<SpotPlace, 2>> places;
  for (std::size_t k = 0; k < wishes.gap.size(); ++k) places.push_back(ports.gap(k));
  return places;
}

TissueFilling link_tissue(const Tissue& tissue, const std::vector<Fracture>& fractures, const PortWishes& wishes,
                          const PortBook& ports, LinkList& links) {
  const auto places = gap_places(wishes, ports);
  TissueFilling filling{tissue, {}};
  for (std::size_t k = 0; k < wishes.gap.size(); ++k) {
    const Fracture& fracture = fractures[wishes.gap[k].fracture];
    const Eigen::Vector3d normal = cut_normal(fracture);
    filling.links.push_back(
        links.add({tissue.name, gap_ends(wishes.gap, places, k, Eigen::MatrixXd::Identity(3, 3)),
                   tissue_flexibility(tissue, wishes.gap[k].area, fracture.gap.value() * normal.x(), normal),
                   Eigen::VectorXd::Zero(3)}));
  }
  return filling;
}

void link_tissues(Assembly& assembly, const PortWishes& wishes, const std::vector<Tissue>& more,
                  const PortBook& ports, LinkList& links) {
  const Construct& construct = assembly.construct;
  const auto add = [&](const Tissue& tissue) {
    const auto is_same = [&](const TissueFilling& filling) { return filling.is_of(tissue); };
    if (std::none_of(assembly.tissues.begin(), assembly.tissues.end(), is_same))
      assembly.tissues.push_back(link_tissue(tissue, construct.fractures, wishes, ports, links));
  };
  for (const auto& fracture : construct.fractures)
    if (fracture.tissue) add(*fracture.tissue);
  for (const auto& step : construct.steps)
    if (step.tissue) add(*step.tissue);
  for (const auto& tissue : more) add(tissue);
}

// The normals of all pairs one after another, then all tangents: what the normals see is looked at all the time.
void link_pairs(Assembly& assembly, const PortWishes& wishes, const PortBook& ports, LinkList& links) {
  const Construct& construct = assembly.construct;
  std::vector<PairLinks> pairs;
  const auto places = gap_places(wishes, ports);
  for (std::size_t k = 0; k < wishes.gap.size(); ++k) {
    const GapSpot& spot = wishes.gap[k];
    const Fracture& fracture = construct.fractures[spot.fracture];
    const Eigen::Vector3d normal = cut_normal(fracture);
    const double gap = fracture.gap.value() * normal.x();
    const auto ends = [&](const Eigen::MatrixXd& directions) {
      return gap_ends(wishes.gap, places, k, directions);
    };
    pairs.push_back(pair_links("fracture", ends, normal, gap, spot.area, construct.bone.cortex));
    assembly.face.push_back({spot.fracture, spot.around, spot.outer, spot.area});
  }
  for (std::size_t k = 0; const UndersideSpot& spot : wishes.underside) {
    const auto ends = [place = ports.underside(k++)](const Eigen::MatrixXd& directions) {
      const auto& [bone, plate] = place;
      return std::vector<solver::LinkEnd>{{plate.body, plate.column, directions},
                                          {bone.body, bone.column, -directions}};
    };
    pairs.push_back(pair_links("underside", ends, spot.normal, spot.gap, spot.area, construct.bone.cortex));
    assembly.underside.push_back({spot.on_plate, spot.fragment, spot.along, spot.gap});
  }
  for (auto& pair : pairs) assembly.pairs.push_back({links.add(std::move(pair.normal)), 0});
  for (std::size_t k = 0; k < pairs.size(); ++k)
    assembly.pairs[k].tangent = links.add(std::move(pairs[k].tangent));
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
std::vector<PlatePort> find_plate_ports(const Plate& plate, const PlateShape& shape, const PortList& list) {
  std::vector<PlatePort> found;
  for (const auto& port : list.columns())
    found.push_back({shape.along_at(port.centre.x()), port.centre, port.column, port.motions});
  for (std::size_t hole = 0; hole < plate.holes.size(); ++hole) {
    const std::string name = hole_name(static_cast<int>(hole) + 1);
    if (!list.has(name)) continue;
    const Eigen::Index first = list.column(name);
    for (auto& port : found)
      if (port.column == first) port.along = plate.holes[hole].position.value();
  }
  return found;
}

LoadPorts find_load_ports(const Construct& construct, const BoneShape& shape, const PortWishes& wishes,
                          const PortBook& ports) {
  LoadPorts found;
  found.proximal_end = {ports.end(body_of_fragment(construct, 0)), shape.section(0.0).centre};
  found.distal_end = {ports.end(body_of_fragment(construct, construct.fractures.size())),
                      shape.section(shape.length()).centre};
  for (const auto& load : construct.loads) {
    if (load.four_point) {
      std::array<Ring, 4> rings;
      const auto places = roller_places(*load.four_point);
      for (std::size_t r = 0; r < rings.size(); ++r) {
        const std::size_t k = roller_index(wishes.rollers, places[r]);
        rings[r] = {ports.roller(k), shape.section(wishes.rollers[k]).centre};
      }
      found.rollers.push_back(rings);
    }
    auto& surfaces = found.surfaces.emplace_back();
    for (const auto& force : load.forces) {
      const auto spot = std::find(wishes.forces.begin(), wishes.forces.end(), spot_of(force));
      surfaces.push_back(ports.force(static_cast<std::size_t>(spot - wishes.forces.begin())));
    }
  }
  return found;
}

AssembledLoad assemble_load(const LoadSetup& setup, const std::vector<BuiltBody>& bodies, LinkList& links) {
  AssembledLoad load;
  load.name = setup.name;
  load.arms = setup.arms;
  for (const auto& support : setup.supports) load.supports.push_back(links.add(support));
  for (const auto& body : bodies)
    load.forces.push_back(Eigen::MatrixXd::Zero(body.condensed->compliance.rows(), 1));
  for (const auto& force : setup.forces)
    load.forces[force.place.body].middleRows(force.place.column, force.force.size()) += force.force;
  return load;
}

void link_everything(Assembly& assembly, const PortWishes& wishes, std::size_t candidates,
                     const std::vector<Tissue>& more_tissues, const PortBook& ports) {
  LinkList links;
  for (std::size_t k = 0; k < candidates; ++k)
    assembly.screws.push_back(link_screw(assembly, wishes.screws[k], false, ports, links));
  link_tissues(assembly, wishes, more_tissues, ports, links);
  link_pairs(assembly, wishes, ports, links);
  link_holds(assembly, wishes, ports, links);
  for (std::size_t p = 0; p < assembly.plates.size(); ++p)
    assembly.plate_ports.push_back(
        find_plate_ports(assembly.construct.plates[p], *assembly.plates[p].shape, ports.ports(body_of_plate(p))));
  assembly.load_ports = find_load_ports(assembly.construct, *assembly.bone_shape, wishes, ports);
  assembly.on_the_table = assemble_load(hold_proximal_end(assembly.load_ports), assembly.bodies, links);
  for (const auto& setup : set_up_loads(assembly.construct.loads, assembly.load_ports))
    assembly.loads.push_back(assemble_load(setup, assembly.bodies, links));
  const auto unit = unit_loads(assembly.load_ports);
  for (std::size_t k = 0; k < unit.size(); ++k)
    assembly.stiffness_loads[k] = assemble_load(unit[k], assembly.bodies, links);
  std::vector<const solver::Condensed*> condensed;
  for (const auto& body : assembly.bodies) condensed.push_back(body.condensed.get());
  assembly.system = std::make_unique<solver::System>(std::move(condensed), links.take(), links.take_shared());
  const auto note_alone = [&](AssembledLoad& load) { load.alone = assembly.system->alone(load.forces); };
  note_alone(assembly.on_the_table);
  for (auto& load : assembly.loads) note_alone(load);
  for (auto& load : assembly.stiffness_loads) note_alone(load);
  if (assembly.construct.second_order != SecondOrderEffects::never) {
    const auto axes = read_axes(assembly.construct, *assembly.system, ports.lists());
    for (auto& load : assembly.loads) load.axes = axes_under(*assembly.system, axes, load.arms);
    assembly.turning = turning_bodies(assembly.construct, ports.lists());
  }
  if (assembly.construct.metal_law == MetalLaw::elastic) return;
  for (std::size_t k = 0; k < assembly.screws.size(); ++k)
    add_screw_sections(assembly.screws[k], static_cast<int>(k), *assembly.system, assembly.yields);
  for (std::size_t p = 0; p < assembly.plates.size(); ++p)
    add_plate_sections(assembly.construct.plates[p], *assembly.plates[p].shape, assembly.plate_ports[p], p,
                       body_of_plate(p), *assembly.system, assembly.yields);
}

// Spots of the cut's faces nearest to an angle: both halves of the wall, and either side when it is half-way.
std::vector<int> next_to(const std::vector<FaceSpot>& face, double around) {
  constexpr double alike = 1e-9;
  std::vector<int> nearest;
  double least = 10.0;
  for (std::size_t k = 0; k < face.size(); ++k) {
    const double distance = std::abs(std::remainder(face[k].around - around, 2.0 * std::numbers::pi));
    if (distance > least + alike) continue;
    if (distance < least - alike) nearest.clear();
    nearest.push_back(static_cast<int>(k));
    least = std::min(least, distance);
  }
  return nearest;
}

}  // namespace

Assembly assemble(const std::shared_ptr<const PreparedBodies>& prepared, const Construct& construct,
                  const std::vector<Screw>& candidates, const std::vector<Tissue>& more_tissues) {
  Assembly assembly;
  assembly.construct = construct;
  assembly.bone_shape = prepared->bone_shape;
  assembly.plates = prepared->plates;
  assembly.fragments = prepared->fragments;
  assembly.bodies = bodies_of(*prepared, construct);
  PortWishes wishes = prepared->wishes;
  wishes.screws = plan_screws(construct, candidates, shapes_of(assembly.plates), *assembly.bone_shape);
  link_everything(assembly, wishes, candidates.size(), more_tissues, prepared->ports);
  for (const double around : assembly.fragments.front().distal_edge->around)
    assembly.face_next_to.push_back(next_to(assembly.face, around));
  for (const double around : {0.0, std::numbers::pi})
    assembly.face_next_to.push_back(next_to(assembly.face, around));
  return assembly;
}

}  // namespace gapstrain::models
