#include "models/checks/checks.h"

#include <fmt/format.h>

#include <utility>

namespace gapstrain::models {

std::string way_out(const PlacedScrew& screw) {
  if (screw.is_wire) return "Put it in another hole or move the plate.";
  if (screw.screw.entry) return "Tilt it away or move its entry.";
  return fmt::format("Tilt it away, leave hole {} empty or move the plate.", screw.screw.hole);
}

std::vector<PlacedScrew> check_crossings(const Construct& construct, const std::vector<bool>& screws_can_be_placed,
                                         const std::vector<bool>& holds_can_be_placed,
                                         const PlateShape& plate_shape, const BoneShape& bone_shape,
                                         ProblemList& problems) {
  std::vector<PlacedScrew> placed;
  const auto place = [&](PlacedScrew screw) {
    screw.placement = place_screw(construct, plate_shape, bone_shape, screw.screw);
    if (screw.placement.bone)
      placed.push_back(std::move(screw));
    else
      problems.error(screw.path, fmt::format("The {} does not pass two clear walls of the bone with canal between "
                                             "them. {}",
                                             screw.name, way_out(screw)));
  };
  for (std::size_t i = 0; i < construct.screws.size(); ++i) {
    const Screw& screw = construct.screws[i];
    if (screws_can_be_placed[i])
      place({path_of_screw(i), fmt::format("screw {}", name_of(screw)), screw, {}, false});
  }
  for (std::size_t i = 0; i < construct.temporary.size(); ++i) {
    const TemporaryHold& hold = construct.temporary[i];
    if (hold.kind == HoldKind::wire && holds_can_be_placed[i])
      place({path_of_hold(i), name_of(hold), wire_as_screw(hold, only(construct.plates).material), {}, true});
  }
  return placed;
}

}  // namespace gapstrain::models
