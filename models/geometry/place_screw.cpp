#include "models/geometry/plate_shape.h"
#include "models/parts/tightening.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>

namespace gapstrain::models {

namespace {

constexpr double tip_beyond_far_cortex = 1.0;  // mm; common practice, no source
constexpr double head_height = 0.6;            // of a head beside the plate, in thread diameters; from memory

const PlateHole& existing_hole(const Plate& plate, int number) {
  const PlateHole* hole = find_hole(plate, number);
  if (hole == nullptr) throw std::invalid_argument("The plate has no hole number " + std::to_string(number) + ".");
  return *hole;
}

void place_in_hole(ScrewPlacement& placement, const mesh::SurfacePoint& centre, const Screw& screw) {
  const Eigen::Vector3d across = Eigen::Vector3d::UnitY();
  const Eigen::Vector3d distal = across.cross(centre.normal);
  placement.hole_centre = centre.position;
  placement.direction =
      (std::tan(screw.tilt_along.value()) * distal + std::tan(screw.tilt_across.value()) * across - centre.normal)
          .normalized();
  const double half_way = -0.5 * centre.thickness / placement.direction.dot(centre.normal);
  placement.head_top = centre.position - half_way * placement.direction;
  placement.underside = centre.position + half_way * placement.direction;
}

void place_beside_plate(ScrewPlacement& placement, const BoneShape& shape, const Screw& screw) {
  const BoneSection section = shape.section(screw.entry->position.value());
  const double around = screw.entry->around.value();
  const Eigen::Vector2d out(std::sin(around), std::cos(around));  // (y, z) in the section
  const double radius = 1.0 / std::hypot(out.x() / section.semi_y, out.y() / section.semi_z);
  const Eigen::Vector3d outward = (section.point(out) - section.centre).normalized();
  placement.hole_centre = section.point(radius * out);
  placement.direction = (std::tan(screw.tilt_along.value()) * section.tangent +
                         std::tan(screw.tilt_across.value()) * outward.cross(section.tangent) - outward)
                            .normalized();
  placement.head_top =
      placement.hole_centre - head_height * screw.size.thread_diameter.value() * placement.direction;
  placement.underside = placement.hole_centre;
}

}  // namespace

ScrewPlacement place_screw(const Plate& plate, const PlateShape& plate_shape, const BoneShape& bone_shape,
                           const Screw& screw, Length slide) {
  ScrewPlacement placement;
  placement.slide = slide.value();
  if (screw.entry)
    place_beside_plate(placement, bone_shape, screw);
  else
    place_in_hole(placement,
                  plate_shape.mid_surface((existing_hole(plate, screw.hole).position - slide).value(), 0.0),
                  screw);
  placement.bone = cross_bone(bone_shape, placement.head_top, placement.direction);
  if (!placement.bone)
    placement.tip = placement.underside;
  else if (screw.cortices == 2)
    placement.tip = placement.bone->far.outer + tip_beyond_far_cortex * placement.direction;
  else
    placement.tip = 0.5 * (placement.bone->near.inner + placement.bone->far.inner);
  return placement;
}

ScrewPlacement place_screw(const Construct& construct, const PlateShape& plate_shape, const BoneShape& bone_shape,
                           const Screw& screw) {
  const Plate& plate = construct.plates[screw.plate];
  return place_screw(plate, plate_shape, bone_shape, screw,
                     slide_along(screw, plate, plate_shape, only(construct.fractures).position));
}

Length slide_along(const Screw& screw, const Plate& plate, const PlateShape& plate_shape,
                   Length fracture_position) {
  if (screw.kind != ScrewKind::compression) return Length();
  const PlateHole& hole = existing_hole(plate, screw.hole);
  const Length room = 0.5 * (hole.slot_length - hole.diameter);
  const Length way = std::min(tightened_slide(screw), room);
  return hole.position.value() < plate_shape.along_at(fracture_position.value()) ? way : -way;
}

}  // namespace gapstrain::models
