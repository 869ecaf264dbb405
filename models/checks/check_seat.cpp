#include "models/checks/checks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

// Of a head beside the plate, in thread diameters: 5.6 mm across at 3.5 mm; from memory.
constexpr double head_radius_in_threads = 0.8;

bool check_entry(const Construct& construct, std::size_t i, ProblemList& problems) {
  const Screw& screw = construct.screws[i];
  const std::string where = path_of_screw(i);
  if (screw.kind != ScrewKind::lag) {
    problems.error(
        where + ".position",
        fmt::format("The screw {} stands beside the plate, where only a lag screw holds anything; give it "
                    "a hole or make it a lag screw.",
                    name_of(screw)));
    return false;
  }
  if (screw.hole != 0) {
    problems.error(where + ".hole",
                   fmt::format("The screw {} has both hole {} and an entry beside the plate; remove "
                               "one.",
                               name_of(screw), screw.hole));
    return false;
  }
  const FreeEntry& entry = *screw.entry;
  if (!problems.finite(where + ".around", fmt::format("The place of {} round the bone", name_of(screw)),
                       entry.around))
    return false;
  if (entry.position > 0.0 * mm && entry.position < construct.bone.length) return true;
  problems.error(
      where + ".position",
      fmt::format("The screw {} enters at {}, outside the bone; it must be between 0 mm and {} from the "
                  "proximal end.",
                  name_of(screw), text(entry.position), text(construct.bone.length)));
  return false;
}

bool check_slide(const Screw& screw, const PlateHole& hole, const std::string& where, ProblemList& problems) {
  if (!problems.not_negative(where + ".slide", fmt::format("The slide of {}", name_of(screw)), *screw.slide))
    return false;
  const Length room = 0.5 * (hole.slot_length - hole.diameter);
  if (*screw.slide > room)
    problems.warning(where + ".slide",
                     fmt::format("The screw {} is to slide {}, but its slot leaves {} only; it slides no further. "
                                 "Use a longer slot or a smaller slide.",
                                 name_of(screw), text(*screw.slide), text(room)));
  return true;
}

bool check_hole_suits(const Screw& screw, const PlateHole& hole, const std::string& where, ProblemList& problems) {
  if (screw.kind == ScrewKind::locking && hole.shape == HoleShape::slot) {
    problems.error(where + ".hole", fmt::format("The locking screw {} goes in hole {}, which is a slot without "
                                                "thread; put it in a round hole.",
                                                name_of(screw), screw.hole));
    return false;
  }
  if (screw.kind == ScrewKind::compression && !(hole.slot_length > hole.diameter)) {
    problems.error(
        where + ".hole",
        fmt::format("The compression screw {} goes in hole {}, which leaves its head no room to slide; put "
                    "it in a slot that is longer than wide, or make it cortical.",
                    name_of(screw), screw.hole));
    return false;
  }
  if (hole.diameter > 0.0 * mm && screw.size.core_diameter > hole.diameter) {
    problems.error(where + ".size",
                   fmt::format("The screw {} has a core of {}, too thick for hole {} of {}; use a thinner screw.",
                               name_of(screw), text(screw.size.core_diameter), screw.hole, text(hole.diameter)));
    return false;
  }
  return screw.kind != ScrewKind::compression || !screw.slide || check_slide(screw, hole, where, problems);
}

// Of a ball from the plate, which is taken as flat there.
double distance_to_plate(const Eigen::Vector3d& point, const PlateShape& shape, const Plate& plate) {
  const double along = shape.along_at(point.x());
  const double on_plate = std::clamp(along, 0.0, plate.length.value());
  const mesh::SurfacePoint under = shape.mid_surface(on_plate, 0.0);
  const double beyond = std::abs(along - on_plate);
  const double beside = std::max(0.0, std::abs(point.y()) - 0.5 * shape.width(on_plate));
  const double above = std::max(0.0, std::abs((point - under.position).dot(under.normal)) - 0.5 * under.thickness);
  return std::hypot(beyond, beside, above);
}

}  // namespace

bool fits_hole(ScrewKind kind, HoleShape shape) {
  return kind == ScrewKind::locking       ? shape == HoleShape::round
         : kind == ScrewKind::compression ? shape == HoleShape::slot
                                          : true;
}

bool check_seat(const Construct& construct, std::size_t index, ProblemList& problems) {
  const Screw& screw = construct.screws[index];
  if (screw.entry) return check_entry(construct, index, problems);
  const auto& holes = only(construct.plates).holes;
  const std::string where = path_of_screw(index);
  if (screw.hole < 1 || static_cast<std::size_t>(screw.hole) > holes.size()) {
    if (!holes.empty())
      problems.error(where + ".hole", fmt::format("The screw {} goes in hole {}, but the plate has holes 1 to {}.",
                                                  name_of(screw), screw.hole, holes.size()));
    return false;
  }
  for (std::size_t k = 0; k < index; ++k)
    if (construct.screws[k].hole == screw.hole) {
      problems.error(where + ".hole", fmt::format("{} in hole {}; move or remove one of them.",
                                                  construct.screws[k].label == screw.label
                                                      ? "Two screws are"
                                                      : fmt::format("The screws {} and {} are both",
                                                                    name_of(construct.screws[k]), name_of(screw)),
                                                  screw.hole));
      return false;
    }
  return check_hole_suits(screw, holes[static_cast<std::size_t>(screw.hole) - 1], where, problems);
}

void check_tightening(const Screw& screw, const std::string& where, ProblemList& problems) {
  const std::string name = name_of(screw);
  if (!is_tightened(screw) && (screw.preload || screw.insertion_torque))
    problems.error(
        where + (screw.preload ? ".preload" : ".torque"),
        fmt::format("The locking screw {} has no preload: its head locks in the plate instead of pressing "
                    "on it. Remove it, or make the screw cortical.",
                    name));
  else if (screw.preload && screw.insertion_torque)
    problems.error(where + ".torque",
                   fmt::format("The screw {} has both a preload and a torque; remove one.", name));
  else if (screw.preload)
    problems.positive(where + ".preload", fmt::format("The preload of {}", name), *screw.preload);
  else if (screw.insertion_torque)
    problems.positive(where + ".torque", fmt::format("The torque on {}", name), *screw.insertion_torque);
  if (screw.slide && screw.kind != ScrewKind::compression)
    problems.error(where + ".slide",
                   fmt::format("The screw {} is no compression screw and does not slide; remove the "
                               "slide or change its kind.",
                               name));
}

void check_beside_plate(const std::vector<PlacedScrew>& screws, const PlateShape& plate_shape, const Plate& plate,
                        ProblemList& problems) {
  for (const PlacedScrew& screw : screws) {
    if (!screw.screw.entry) continue;
    const ScrewPlacement& placement = screw.placement;
    const double head = head_radius_in_threads * screw.screw.size.thread_diameter.value();
    const double shaft = 0.5 * screw.screw.size.thread_diameter.value();
    const Eigen::Vector3d head_centre = 0.5 * (placement.head_top + placement.underside);
    if (const double found = distance_to_plate(head_centre, plate_shape, plate); found < head)
      problems.error(
          screw.path + ".around",
          fmt::format("The head of the {} stands in the plate's way: its centre is {:.3g} mm from the plate "
                      "and needs {:.3g} mm. Move its entry further round the bone or along it.",
                      screw.name, found, head));
    else if (const double at_tip = distance_to_plate(placement.tip, plate_shape, plate); at_tip < shaft)
      problems.error(
          screw.path + ".around",
          fmt::format("The {} leaves the bone under the plate: its tip is {:.3g} mm from it and needs {:.3g} "
                      "mm. Move its entry round the bone, or tilt it away.",
                      screw.name, at_tip, shaft));
  }
}

}  // namespace gapstrain::models
