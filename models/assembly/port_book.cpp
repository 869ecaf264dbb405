#include "models/assembly/port_book.h"

#include <fmt/format.h>

namespace gapstrain::models {

namespace {

void add_screws(PortList& list, const solver::Shell& bone, const std::vector<PlannedScrew>& screws) {
  const auto add = [&](const std::string& spot, const WallCrossing& wall, double radius) {
    if (!spot.empty() && bone.mesh->groups.contains("spot:" + spot))
      list.add(spot, spot_port(bone, spot, wall.middle, radius));
  };
  for (const auto& screw : screws) {
    add(screw.near_spot, screw.placement.bone->near, screw.near_radius());
    add(screw.far_spot, screw.placement.bone->far, screw.screw.size.core_diameter.value() / 2.0);
  }
}

std::string gap_name(std::size_t k) { return fmt::format("gap:{}", k); }
std::string underside_name(std::size_t k) { return fmt::format("underside:{}", k); }
std::string clamp_name(std::size_t k, std::size_t tip) { return fmt::format("clamp:{}:{}", k, tip); }

}  // namespace

PortBook::PortBook(const PortWishes& wishes, const Construct& construct, const PlateShape& plate_shape,
                   const BoneShape& bone_shape, const std::array<const solver::Shell*, 3>& shells) {
  for (const auto& screw : wishes.screws) {
    const std::string name = fmt::format("hole:{}", screw.screw.hole);
    if (screw.screw.hole > 0 && !lists_[plate_body].has(name))
      lists_[plate_body].add(name, hole_port(*shells[plate_body], construct, plate_shape, screw.screw.hole));
  }
  for (const int body : {proximal_body, distal_body}) {
    PortList& list = lists_[static_cast<std::size_t>(body)];
    const solver::Shell& shell = *shells[static_cast<std::size_t>(body)];
    add_screws(list, shell, wishes.screws);
    const double end = body == proximal_body ? 0.0 : bone_shape.length();
    list.add("end", ring_port(shell, "end", bone_shape.section(end).centre));
    for (std::size_t k = 0; k < wishes.rollers.size(); ++k) {
      const std::string group = fmt::format("section:{}", k);
      if (shell.mesh->groups.contains(group))
        list.add(group, ring_port(shell, group, bone_shape.section(wishes.rollers[k]).centre));
    }
  }
  for (std::size_t k = 0; k < wishes.gap.size(); ++k) {
    lists_[proximal_body].add(gap_name(k), wishes.gap[k].proximal);
    lists_[distal_body].add(gap_name(k), wishes.gap[k].distal);
  }
  for (std::size_t k = 0; k < wishes.underside.size(); ++k) {
    lists_[plate_body].add(underside_name(k), wishes.underside[k].plate);
    lists_[proximal_body + wishes.underside[k].fragment].add(underside_name(k), wishes.underside[k].bone);
  }
  for (std::size_t k = 0; k < wishes.clamps.size(); ++k)
    for (const std::size_t tip : {0U, 1U})
      lists_[static_cast<std::size_t>(wishes.clamps[k][tip].body)].add(clamp_name(k, tip),
                                                                       wishes.clamps[k][tip].port);
}

PortPlace PortBook::hole(int number) const { return place(plate_body, fmt::format("hole:{}", number)); }

PortPlace PortBook::bone(const std::string& name) const {
  return place(ports(proximal_body).has(name) ? proximal_body : distal_body, name);
}

std::array<SpotPlace, 2> PortBook::gap(std::size_t k) const {
  return {spot(proximal_body, gap_name(k)), spot(distal_body, gap_name(k))};
}

std::array<SpotPlace, 2> PortBook::underside(std::size_t k, std::size_t fragment) const {
  return {spot(proximal_body + static_cast<int>(fragment), underside_name(k)),
          spot(plate_body, underside_name(k))};
}

std::array<SpotPlace, 2> PortBook::clamp(std::size_t k, const std::array<ClampTip, 2>& tips) const {
  return {spot(tips[0].body, clamp_name(k, 0)), spot(tips[1].body, clamp_name(k, 1))};
}

}  // namespace gapstrain::models
