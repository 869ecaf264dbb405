#include "models/checks/checks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

// The narrowest bridge of metal that is still meshed, as a share of the hole; common practice, no source.
constexpr double least_bridge_share = 0.05;

// Customary are 1 to 2 mm over a transverse fracture (from memory); beyond this a plate is no longer nearly flat.
const Length largest_prebend = 5.0 * mm;

void check_sections(const Plate& plate, ProblemList& problems) {
  if (plate.sections.empty())
    problems.error("plate.section", "The plate has no width and thickness; give them at one place at least.");
  for (std::size_t i = 0; i < plate.sections.size(); ++i) {
    const PlateSection& section = plate.sections[i];
    const std::string where = fmt::format("plate.section[{}]", i);
    problems.positive(where + ".width", "The plate's width", section.width);
    problems.positive(where + ".thickness", "The plate's thickness", section.thickness);
    problems.within(where + ".position", "The section's position along the plate", section.position, 0.0 * mm,
                    plate.length);
    if (i > 0 && section.position <= plate.sections[i - 1].position)
      problems.error(
          where + ".position",
          fmt::format("The section's position is {}, not beyond the one before it at {}; list the sections "
                      "from the plate's proximal end.",
                      text(section.position), text(plate.sections[i - 1].position)));
  }
}

bool check_hole_size(const PlateHole& hole, const std::string& where, ProblemList& problems) {
  if (!problems.finite(where + ".position", "The hole's position", hole.position) ||
      !problems.positive(where + ".diameter", "The hole's diameter", hole.diameter))
    return false;
  const bool is_round = hole.shape == HoleShape::round;
  if (is_round ? hole.slot_length == hole.diameter : hole.slot_length >= hole.diameter) return true;
  problems.error(where + ".slot_length",
                 is_round ? fmt::format("The slot length is {} at a round hole of {}; make it a slot or leave the "
                                        "slot length out.",
                                        text(hole.slot_length), text(hole.diameter))
                          : fmt::format("The slot is {} long and {} across; a slot must not be shorter than it is "
                                        "wide.",
                                        text(hole.slot_length), text(hole.diameter)));
  return false;
}

Length width_at(const Plate& plate, Length along) {
  const auto above = std::find_if(plate.sections.begin(), plate.sections.end(),
                                  [&](const auto& s) { return s.position > along; });
  if (above == plate.sections.begin()) return plate.sections.front().width;
  if (above == plate.sections.end()) return plate.sections.back().width;
  const PlateSection& one = *(above - 1);
  const double share = ((along - one.position) / (above->position - one.position)).value();
  return one.width + share * (above->width - one.width);
}

void check_hole_place(const Plate& plate, std::size_t i, ProblemList& problems) {
  const PlateHole& hole = plate.holes[i];
  const std::string where = fmt::format("plate.hole[{}]", i);
  const Length bridge = least_bridge_share * hole.diameter;
  const Length start = hole.position - 0.5 * hole.slot_length, end = hole.position + 0.5 * hole.slot_length;
  if (start < bridge || end > plate.length - bridge) {
    problems.error(
        where + ".position",
        fmt::format("Hole {} reaches from {} to {} along the plate and cuts its end; on a plate {} long it "
                    "must end at least {} before the end. Move the hole or lengthen the plate.",
                    i + 1, text(start), text(end), text(plate.length), text(bridge)));
  }
  const Length width = std::min({width_at(plate, start), width_at(plate, hole.position), width_at(plate, end)});
  if (hole.diameter + 2.0 * bridge > width)
    problems.error(
        where + ".diameter",
        fmt::format("Hole {} is {} across in a plate only {} wide there; allowed is at "
                    "most {}. Use a smaller hole or a wider plate.",
                    i + 1, text(hole.diameter), text(width), text(width / (1.0 + 2.0 * least_bridge_share))));
  if (i == 0) return;
  const PlateHole& before = plate.holes[i - 1];
  if (!(hole.position > before.position)) {
    problems.error(where + ".position",
                   fmt::format("Hole {} lies at {}, not beyond hole {} at {}; list the holes from "
                               "the plate's proximal end.",
                               i + 1, text(hole.position), i, text(before.position)));
    return;
  }
  const Length between = start - (before.position + 0.5 * before.slot_length);
  if (between < bridge)
    problems.error(where + ".position",
                   fmt::format("Holes {} and {} {}; they must leave at least {} of metal between them. Move them "
                               "apart or make them smaller.",
                               i, i + 1,
                               between < 0.0 * mm ? fmt::format("overlap by {}", text(-between))
                                                  : fmt::format("are only {} apart", text(between)),
                               text(bridge)));
}

}  // namespace

void check_plate(const Plate& plate, ProblemList& problems) {
  const auto before = problems.error_count();
  problems.positive("plate.length", "The plate's length", plate.length);
  problems.finite("plate.proximal_end", "The place of the plate's proximal end", plate.proximal_end);
  problems.not_negative("plate.standoff", "The plate's standoff", plate.standoff);
  if (problems.error_count() == before) check_sections(plate, problems);
  const bool can_place_holes = problems.error_count() == before;
  if (plate.holes.empty())
    problems.error("plate.hole", "The plate has no holes, so no screw can hold it; list its holes.");
  bool are_sizes_good = true;
  for (std::size_t i = 0; i < plate.holes.size(); ++i)
    are_sizes_good &= check_hole_size(plate.holes[i], fmt::format("plate.hole[{}]", i), problems);
  if (!can_place_holes || !are_sizes_good) return;
  for (std::size_t i = 0; i < plate.holes.size(); ++i) check_hole_place(plate, i, problems);
}

void check_plate_system(const Plate& plate, ProblemList& problems) {
  if (!(plate.angle_limit >= 0.0 * degree && plate.angle_limit <= 45.0 * degree))
    problems.error("plate.angle_limit",
                   fmt::format("The angle limit of the locking screws is {}; allowed is 0 deg to 45 deg.",
                               text(plate.angle_limit)));
  if (!(plate.finish_factor > 0.0 && plate.finish_factor <= 1.0))
    problems.error("plate.finish_factor",
                   fmt::format("The finish factor is {:.4g}; it must be above 0 and at most 1 (a smooth finish).",
                               plate.finish_factor));
}

void check_prebend(const Plate& plate, ProblemList& problems) {
  if (!problems.within("plate.prebend", "The plate's prebend", plate.prebend, 0.0 * mm, largest_prebend)) return;
  if (plate.contour == Contour::straight && plate.prebend > 0.0 * mm)
    problems.error("plate.prebend",
                   fmt::format("The plate is prebent by {} but left straight; a prebend comes on top of following "
                               "the bone. Let the contour follow the bone or remove the prebend.",
                               text(plate.prebend)));
}

void check_plate_on_bone(const Plate& plate, const PlateShape& plate_shape, const BoneShape& bone_shape,
                         ProblemList& problems) {
  const double start = plate_shape.x_at(0.0), end = plate_shape.x_at(plate.length.value());
  const double rounding = 1e-9 * bone_shape.length();
  if (start < -rounding)
    problems.error(
        "plate.proximal_end",
        fmt::format("The plate begins {:.4g} mm beyond the bone's proximal end; move it distally or use a "
                    "shorter plate.",
                    -start));
  if (end > bone_shape.length() + rounding)
    problems.error(
        "plate.proximal_end",
        fmt::format("The plate ends at {:.4g} mm, {:.4g} mm beyond the bone's distal end at {:.4g} mm; move "
                    "it proximally or use a shorter plate.",
                    end, end - bone_shape.length(), bone_shape.length()));
  constexpr int samples = 100;
  for (int i = 0; i <= samples; ++i) {
    const double x = start + (end - start) * i / samples;
    const BoneSection here = bone_shape.section(x);
    if (std::abs(here.centre.y()) < 0.5 * here.semi_y) continue;
    problems.error(
        "plate.aspect",
        fmt::format("At {:.4g} mm the bone bows {:.4g} mm to the side under a straight-edged plate, more "
                    "than a quarter of its width of {:.4g} mm; put the plate on the aspect the bone bows "
                    "to, or use a shorter one.",
                    x, std::abs(here.centre.y()), 2.0 * here.semi_y));
    return;
  }
}

}  // namespace gapstrain::models
