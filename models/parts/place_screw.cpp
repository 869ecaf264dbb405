#include "models/parts/plate_shape.h"

#include <Eigen/Geometry>
#include <cmath>
#include <stdexcept>

namespace gapstrain::models {

namespace {
constexpr double tip_beyond_far_cortex = 1.0;  // mm; common practice, no source
}

ScrewPlacement place_screw(const Plate& plate, const PlateShape& plate_shape, const BoneShape& bone_shape,
                           int hole, Angle tilt_along, Angle tilt_across, int cortices) {
  if (hole < 1 || static_cast<std::size_t>(hole) > plate.holes.size())
    throw std::invalid_argument("The plate has no hole number " + std::to_string(hole) + ".");
  const double along = plate.holes[static_cast<std::size_t>(hole) - 1].position.value();
  const mesh::SurfacePoint centre = plate_shape.mid_surface(along, 0.0);
  const Eigen::Vector3d across = Eigen::Vector3d::UnitY();
  const Eigen::Vector3d distal = across.cross(centre.normal);

  ScrewPlacement screw;
  screw.hole_centre = centre.position;
  screw.direction =
      (std::tan(tilt_along.value()) * distal + std::tan(tilt_across.value()) * across - centre.normal)
          .normalized();
  const double half_way = -0.5 * centre.thickness / screw.direction.dot(centre.normal);
  screw.head_top = centre.position - half_way * screw.direction;
  screw.underside = centre.position + half_way * screw.direction;
  screw.bone = cross_bone(bone_shape, screw.underside, screw.direction);
  if (!screw.bone)
    screw.tip = screw.underside;
  else if (cortices == 2)
    screw.tip = screw.bone->far.outer + tip_beyond_far_cortex * screw.direction;
  else
    screw.tip = 0.5 * (screw.bone->near.inner + screw.bone->far.inner);
  return screw;
}

}  // namespace gapstrain::models
