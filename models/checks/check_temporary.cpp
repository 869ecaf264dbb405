#include "models/checks/checks.h"

#include <fmt/format.h>

#include <cmath>

namespace gapstrain::models {

namespace {

// Of a clamp's foot from a hole's edge, as a share of the hole: the ring of cells round the rim. A choice of this
// program.
constexpr double least_hole_distance_share = 0.1;

// The mesh has one rim and one pair of spots a hole, whenever what goes through it is in.
bool check_hole_is_free(const Construct& construct, std::size_t i, ProblemList& problems) {
  const TemporaryHold& wire = construct.temporary[i];
  const auto refuse = [&](const std::string& other) {
    problems.error(path_of_hold(i) + ".hole",
                   fmt::format("The {} and the {} go through the same hole {}; the mesh needs room for each, even "
                               "when one is taken out before the other goes in. Put the wire in another hole.",
                               name_of(wire), other, wire.hole));
    return false;
  };
  for (const Screw& screw : construct.screws)
    if (screw.hole == wire.hole) return refuse("screw " + name_of(screw));
  for (std::size_t k = 0; k < i; ++k) {
    const TemporaryHold& other = construct.temporary[k];
    if (other.kind == HoldKind::wire && other.hole == wire.hole) return refuse(name_of(other));
  }
  return true;
}

bool check_wire(const Construct& construct, std::size_t i, ProblemList& problems) {
  const TemporaryHold& wire = construct.temporary[i];
  const std::string where = path_of_hold(i);
  if (!problems.positive(where + ".diameter", fmt::format("The diameter of the {}", name_of(wire)), wire.diameter))
    return false;
  const PlateHole* hole = find_hole(only(construct.plates), wire.hole);
  if (hole == nullptr) {
    if (!only(construct.plates).holes.empty())
      problems.error(where + ".hole", fmt::format("The {} goes through hole {}, but the plate has holes 1 to {}.",
                                                  name_of(wire), wire.hole, only(construct.plates).holes.size()));
    return false;
  }
  if (hole->diameter > 0.0 * mm && wire.diameter >= hole->diameter) {
    problems.error(where + ".diameter",
                   fmt::format("The {} is {} thick and does not pass hole {} of {}; use a thinner wire.",
                               name_of(wire), text(wire.diameter), wire.hole, text(hole->diameter)));
    return false;
  }
  return check_hole_is_free(construct, i, problems);
}

bool check_plate_clamp(const Construct& construct, std::size_t i, ProblemList& problems) {
  const TemporaryHold& clamp = construct.temporary[i];
  const std::string where = path_of_hold(i) + ".along";
  if (!problems.within(where, fmt::format("The place of the {} along the plate", name_of(clamp)), clamp.along,
                       0.0 * mm, only(construct.plates).length))
    return false;
  for (std::size_t k = 0; k < only(construct.plates).holes.size(); ++k) {
    const PlateHole& hole = only(construct.plates).holes[k];
    const Length needed = 0.5 * hole.slot_length + least_hole_distance_share * hole.diameter;
    const Length found = std::abs((clamp.along - hole.position).value()) * mm;
    if (!(found < needed)) continue;
    problems.error(where, fmt::format("The {} presses {} from the centre of hole {} and so over its rim; it must "
                                      "stand on metal, {} away at least. Move it along the plate.",
                                      name_of(clamp), text(found), k + 1, text(needed)));
    return false;
  }
  return true;
}

bool check_hold(const Construct& construct, std::size_t i, ProblemList& problems) {
  const TemporaryHold& hold = construct.temporary[i];
  if (hold.kind == HoldKind::wire) return check_wire(construct, i, problems);
  const bool is_force_good =
      problems.positive(path_of_hold(i) + ".force", fmt::format("The force of the {}", name_of(hold)), hold.force);
  if (hold.kind == HoldKind::plate_clamp) return check_plate_clamp(construct, i, problems) && is_force_good;
  return is_force_good;
}

}  // namespace

std::string path_of_hold(std::size_t index) { return fmt::format("temporary[{}]", index); }

std::string name_of(const TemporaryHold& hold) {
  return fmt::format("{} \"{}\"", hold.kind == HoldKind::wire ? "wire" : "clamp", hold.label);
}

std::vector<bool> check_temporary(const Construct& construct, ProblemList& problems) {
  std::vector<bool> can_be_placed;
  for (std::size_t i = 0; i < construct.temporary.size(); ++i)
    can_be_placed.push_back(check_hold(construct, i, problems));
  return can_be_placed;
}

}  // namespace gapstrain::models
