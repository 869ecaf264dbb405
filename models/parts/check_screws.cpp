#include "models/parts/checks.h"

#include <fmt/format.h>

#include <cmath>

namespace gapstrain::models {

namespace {

// Customary limit of variable-angle locking holes (10 to 15 degrees), from memory.
const Angle largest_tilt = 15.0 * degree;

bool check_size(const Screw& screw, const std::string& where, ProblemList& problems) {
  const std::string name = name_of(screw);
  bool is_good = problems.positive(where + ".thread_diameter", fmt::format("The thread diameter of {}", name),
                                   screw.size.thread_diameter);
  is_good &= problems.positive(where + ".core_diameter", fmt::format("The core diameter of {}", name),
                               screw.size.core_diameter);
  is_good &= problems.positive(where + ".pitch", fmt::format("The pitch of {}", name), screw.size.pitch);
  if (is_good && screw.size.core_diameter > screw.size.thread_diameter) {
    problems.error(where + ".core_diameter",
                   fmt::format("The core diameter of {} is {}, above its thread's {}; exchange the two.", name,
                               text(screw.size.core_diameter), text(screw.size.thread_diameter)));
    return false;
  }
  return is_good;
}

bool check_tilt(const Screw& screw, const std::string& where, ProblemList& problems) {
  const std::string name = name_of(screw);
  if (!problems.finite(where + ".tilt_along", fmt::format("The tilt of {} along the plate", name),
                       screw.tilt_along) ||
      !problems.finite(where + ".tilt_across", fmt::format("The tilt of {} across the plate", name),
                       screw.tilt_across))
    return false;
  const double along = screw.tilt_along.value(), across = screw.tilt_across.value();
  const double quarter_turn = 90.0 * degree.value();
  const bool is_forward = std::abs(along) < quarter_turn && std::abs(across) < quarter_turn;
  const Angle tilt = is_forward ? std::atan(std::hypot(std::tan(along), std::tan(across))) * radian
                                : std::max(std::abs(along), std::abs(across)) * radian;
  if (tilt <= largest_tilt * (1.0 + 1e-9)) return true;
  problems.error(where + (std::abs(along) >= std::abs(across) ? ".tilt_along" : ".tilt_across"),
                 fmt::format("The screw {} is tilted by {} in all; a locking head allows at most {}. Turn it back "
                             "towards square to the plate.",
                             name, text(tilt), text(largest_tilt)));
  return false;
}

bool check_hole(const Construct& construct, std::size_t i, ProblemList& problems) {
  const Screw& screw = construct.screws[i];
  const auto& holes = construct.plate.holes;
  const std::string where = path_of_screw(i);
  if (screw.hole < 1 || static_cast<std::size_t>(screw.hole) > holes.size()) {
    if (!holes.empty())
      problems.error(where + ".hole", fmt::format("The screw {} goes in hole {}, but the plate has holes 1 to {}.",
                                                  name_of(screw), screw.hole, holes.size()));
    return false;
  }
  for (std::size_t k = 0; k < i; ++k)
    if (construct.screws[k].hole == screw.hole) {
      problems.error(where + ".hole",
                     fmt::format("The screws {} and {} are both in hole {}; move or remove one of "
                                 "them.",
                                 name_of(construct.screws[k]), name_of(screw), screw.hole));
      return false;
    }
  const PlateHole& hole = holes[static_cast<std::size_t>(screw.hole) - 1];
  if (screw.kind == ScrewKind::locking && hole.shape == HoleShape::slot) {
    problems.error(where + ".hole", fmt::format("The locking screw {} goes in hole {}, which is a slot without "
                                                "thread; put it in a round hole.",
                                                name_of(screw), screw.hole));
    return false;
  }
  if (hole.diameter > 0.0 * mm && screw.size.core_diameter > hole.diameter) {
    problems.error(where + ".size",
                   fmt::format("The screw {} has a core of {}, too thick for hole {} of {}; use a "
                               "thinner screw.",
                               name_of(screw), text(screw.size.core_diameter), screw.hole, text(hole.diameter)));
    return false;
  }
  return true;
}

}  // namespace

std::string path_of_screw(std::size_t index) { return fmt::format("screw[{}]", index); }

std::string name_of(const Screw& screw) {
  return screw.label.empty() ? fmt::format("in hole {}", screw.hole) : fmt::format("\"{}\"", screw.label);
}

std::vector<bool> check_screws(const Construct& construct, ProblemList& problems) {
  std::vector<bool> can_be_placed;
  if (construct.screws.empty())
    problems.error("screw",
                   "There is no screw, so nothing holds the plate to the bone; add at least two a fragment.");
  for (std::size_t i = 0; i < construct.screws.size(); ++i) {
    const Screw& screw = construct.screws[i];
    const std::string where = path_of_screw(i);
    bool is_good = check_size(screw, where, problems);
    is_good = check_tilt(screw, where, problems) && is_good;
    is_good = is_good && check_hole(construct, i, problems);
    check_metal(screw.material, where + ".material", problems);
    if (screw.cortices != 1 && screw.cortices != 2) {
      problems.error(where + ".cortices",
                     fmt::format("The screw {} has {} cortices; allowed are 1 (ends in the canal) "
                                 "and 2 (passes the far cortex).",
                                 name_of(screw), screw.cortices));
      is_good = false;
    }
    can_be_placed.push_back(is_good);
  }
  return can_be_placed;
}

std::vector<PlacedScrew> check_crossings(const Construct& construct, const std::vector<bool>& can_be_placed,
                                         const PlateShape& plate_shape, const BoneShape& bone_shape,
                                         ProblemList& problems) {
  std::vector<PlacedScrew> placed;
  for (std::size_t i = 0; i < construct.screws.size(); ++i) {
    if (!can_be_placed[i]) continue;
    const Screw& screw = construct.screws[i];
    const ScrewPlacement placement = place_screw(construct.plate, plate_shape, bone_shape, screw.hole,
                                                 screw.tilt_along, screw.tilt_across, screw.cortices);
    if (placement.bone)
      placed.push_back({i, &screw, placement});
    else
      problems.error(path_of_screw(i),
                     fmt::format("The screw {} does not pass two clear walls of the bone with canal "
                                 "between them; move the plate, tilt the screw back or leave hole {} "
                                 "empty.",
                                 name_of(screw), screw.hole));
  }
  return placed;
}

}  // namespace gapstrain::models
