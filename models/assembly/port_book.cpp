#include "models/assembly/port_book.h"

#include "models/assembly/axis_ports.h"
#include "models/assembly/body_numbers.h"
#include "models/assembly/surface_place.h"
#include "models/geometry/fracture_cut.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <utility>

namespace gapstrain::models {

namespace {

std::string gap_name(std::size_t k) { return fmt::format("gap:{}", k); }
std::string underside_name(std::size_t k) { return fmt::format("underside:{}", k); }
std::string clamp_name(std::size_t k, std::size_t tip) { return fmt::format("clamp:{}:{}", k, tip); }

// That of the mesh's line round the bone, too.
std::string roller_name(std::size_t k) { return fmt::format("section:{}", k); }
std::string force_name(std::size_t k) { return fmt::format("force:{}", k); }

using BodyPorts = std::vector<NamedPort>;

void add_holes(std::vector<BodyPorts>& bodies, const std::vector<PlannedScrew>& screws, const Construct& construct,
               const std::vector<std::shared_ptr<const PlateShape>>& shapes,
               const std::vector<solver::Shell>& shells) {
  for (const auto& planned : screws) {
    const Screw& screw = planned.screw;
    if (screw.hole <= 0) continue;
    const std::size_t body = body_of_plate(screw.plate);
    const std::string name = hole_name(screw.hole);
    if (std::none_of(bodies[body].begin(), bodies[body].end(),
                     [&](const auto& port) { return port.name == name; }))
      bodies[body].push_back(
          {name, hole_port(shells[body], construct.plates[screw.plate], *shapes[screw.plate], screw.hole)});
  }
}

void add_shafts(BodyPorts& ports, const solver::Shell& bone, const std::vector<PlannedScrew>& screws) {
  const auto add = [&](const std::string& spot, const WallCrossing& wall, double radius) {
    const bool is_there = std::any_of(ports.begin(), ports.end(), [&](const auto& p) { return p.name == spot; });
    if (!spot.empty() && !is_there && bone.mesh->groups.contains("spot:" + spot))
      ports.push_back({spot, spot_port(bone, spot, wall.middle, radius)});
  };
  for (const auto& screw : screws) {
    add(screw.near_spot, screw.placement.bone->near, screw.near_radius());
    add(screw.far_spot, screw.placement.bone->far, screw.screw.size.core_diameter.value() / 2.0);
  }
}

// The bone's own end, where the fragment has one, and sections under rollers.
void add_rings(BodyPorts& ports, const solver::Shell& bone, const std::vector<double>& rollers,
               const BoneShape& shape, bool is_first, bool is_last) {
  if (is_first || is_last)
    ports.push_back({"end", ring_port(bone, "end", shape.section(is_first ? 0.0 : shape.length()).centre)});
  for (std::size_t k = 0; k < rollers.size(); ++k) {
    const std::string group = roller_name(k);
    if (bone.mesh->groups.contains(group))
      ports.push_back({group, ring_port(bone, group, shape.section(rollers[k]).centre)});
  }
}

// Square to the bone's axis through its section's centre, out to the surface.
void add_forces(std::vector<BodyPorts>& bodies, const std::vector<SurfaceSpot>& spots, const Construct& construct,
                const BoneShape& shape, const std::vector<solver::Shell>& shells) {
  for (std::size_t k = 0; k < spots.size(); ++k) {
    const BoneSection section = shape.section(spots[k].x);
    const Eigen::Vector3d place = section.point(section.outer().at_angle(spots[k].around));
    std::size_t fragment = 0;
    for (const auto& fracture : construct.fractures)
      fragment += CutThroughBone(fracture, shape).is_distal(place) ? 1U : 0U;
    const std::size_t body = body_of_fragment(construct, fragment);
    auto port = outer_port(shells[body], section.centre, (place - section.centre).normalized());
    if (!port)
      throw NoBoneError(fmt::format("a force at {:.4g} mm along the bone finds no bone to act on", spots[k].x));
    bodies[body].push_back({force_name(k), std::move(*port)});
  }
}

// All holes of a plate are on its axis.
void add_axes(std::vector<BodyPorts>& bodies, const Construct& construct,
              const std::vector<std::shared_ptr<const PlateShape>>& shapes,
              const std::vector<solver::Shell>& shells) {
  const auto has = [&](std::size_t body, const std::string& name) {
    return std::any_of(bodies[body].begin(), bodies[body].end(),
                       [&](const auto& port) { return port.name == name; });
  };
  for (std::size_t p = 0; p < construct.plates.size(); ++p) {
    const std::size_t body = body_of_plate(p);
    for (int hole = 1; hole <= static_cast<int>(construct.plates[p].holes.size()); ++hole)
      if (const std::string name = hole_name(hole); !has(body, name))
        bodies[body].push_back({name, hole_port(shells[body], construct.plates[p], *shapes[p], hole)});
  }
  for (std::size_t f = 0; f < fragment_count(construct); ++f) {
    const std::size_t body = body_of_fragment(construct, f);
    auto stations = station_ports(shells[body], f == 0, f + 1 == fragment_count(construct));
    for (std::size_t k = 0; k < stations.size(); ++k)
      bodies[body].push_back({station_name(k), std::move(stations[k])});
  }
}

}  // namespace

std::string hole_name(int hole) { return fmt::format("hole:{}", hole); }

std::vector<std::vector<NamedPort>> make_ports(const PortWishes& wishes, const Construct& construct,
                                               const std::vector<std::shared_ptr<const PlateShape>>& plate_shapes,
                                               const BoneShape& bone_shape,
                                               const std::vector<solver::Shell>& shells) {
  std::vector<BodyPorts> bodies(shells.size());
  add_holes(bodies, wishes.screws, construct, plate_shapes, shells);
  const std::size_t fragments = fragment_count(construct);
  for (std::size_t f = 0; f < fragments; ++f) {
    const std::size_t body = body_of_fragment(construct, f);
    add_shafts(bodies[body], shells[body], wishes.screws);
    add_rings(bodies[body], shells[body], wishes.rollers, bone_shape, f == 0, f + 1 == fragments);
  }
  for (std::size_t k = 0; k < wishes.gap.size(); ++k) {
    const GapSpot& spot = wishes.gap[k];
    bodies[body_of_fragment(construct, spot.fracture)].push_back({gap_name(k), spot.proximal});
    bodies[body_of_fragment(construct, spot.fracture + 1)].push_back({gap_name(k), spot.distal});
  }
  for (std::size_t k = 0; k < wishes.underside.size(); ++k) {
    const UndersideSpot& spot = wishes.underside[k];
    bodies[body_of_plate(spot.on_plate)].push_back({underside_name(k), spot.plate});
    bodies[body_of_fragment(construct, spot.fragment)].push_back({underside_name(k), spot.bone});
  }
  for (std::size_t k = 0; k < wishes.clamps.size(); ++k)
    for (const std::size_t tip : {0U, 1U})
      bodies[wishes.clamps[k][tip].body].push_back({clamp_name(k, tip), wishes.clamps[k][tip].port});
  add_forces(bodies, wishes.forces, construct, bone_shape, shells);
  if (construct.second_order != SecondOrderEffects::never) add_axes(bodies, construct, plate_shapes, shells);
  return bodies;
}

PortBook::PortBook(const std::vector<std::vector<NamedPort>>& ports) {
  for (const auto& of_body : ports) {
    PortList& list = lists_.emplace_back();
    Eigen::Index column = 0;
    for (const auto& [name, port] : of_body) {
      list.add({name, port.centre, column, port.motions()});
      column += port.motions();
    }
  }
}

PortPlace PortBook::hole(std::size_t plate, int number) const {
  const std::size_t body = body_of_plate(plate);
  return {body, ports(body).column(hole_name(number))};
}

PortPlace PortBook::named(const std::string& name) const {
  const auto list = std::find_if(lists_.begin(), lists_.end(), [&](const PortList& one) { return one.has(name); });
  assert(list != lists_.end());
  return {static_cast<std::size_t>(list - lists_.begin()), list->column(name)};
}

PortPlace PortBook::roller(std::size_t k) const { return named(roller_name(k)); }

SurfacePort PortBook::force(std::size_t k) const {
  const std::string name = force_name(k);
  const PortPlace place = named(name);
  const auto& columns = ports(place.body).columns();
  const auto port =
      std::find_if(columns.begin(), columns.end(), [&](const PortColumns& one) { return one.name == name; });
  return {place, port->centre};
}

std::array<SpotPlace, 2> PortBook::pair(const std::string& name) const {
  std::array<SpotPlace, 2> found;
  std::size_t count = 0;
  for (std::size_t body = 0; body < lists_.size() && count < 2; ++body)
    if (lists_[body].has(name)) found[count++] = {body, lists_[body].column(name)};
  assert(count == 2);
  return found;
}

std::array<SpotPlace, 2> PortBook::gap(std::size_t k) const { return pair(gap_name(k)); }

std::array<SpotPlace, 2> PortBook::underside(std::size_t k) const {
  const auto [plate, bone] = pair(underside_name(k));
  return {bone, plate};
}

std::array<SpotPlace, 2> PortBook::clamp(std::size_t k, const std::array<ClampTip, 2>& tips) const {
  const auto place = [&](std::size_t tip) -> SpotPlace {
    return {tips[tip].body, ports(tips[tip].body).column(clamp_name(k, tip))};
  };
  return {place(0), place(1)};
}

}  // namespace gapstrain::models
