// The plate as it lies on the bone: its curved mid-surface in construct axes (see bone_shape.h). Plain numbers in
// mm. A plate that follows the bone is curved like the bone's bed. A straight one is parallel to the line between
// the bed's places under its ends, so that it does not stand off a tapering bone on one side.
#pragma once

#include "mesh/roll_up.h"
#include "models/geometry/bone_shape.h"
#include "models/parts/construct.h"
#include "models/parts/plate.h"
#include "models/parts/screw.h"

#include <Eigen/Core>

#include <vector>

namespace gapstrain::models {

class PlateShape {
 public:
  // Needs a length and at least one section, as `check` asks for.
  PlateShape(const Plate& plate, const BoneShape& bone);

  // Mid-surface at arc length `along` from the proximal end and `across` from the centre line (towards +y); the
  // plate is curved in the x-z plane only. The normal points away from the bone.
  mesh::SurfacePoint mid_surface(double along, double across) const;

  double thickness(double along) const;
  double width(double along) const;

  // Axis coordinate x of the centre line at `along`, and the reverse. Beyond the ends along the end's tangent.
  double x_at(double along) const;
  double along_at(double x) const;

 private:
  // A place of the centre line: in the x-z plane, at an arc length, with the slope angle of the underside there.
  struct Knot {
    double along, x, z, slope_angle;
  };
  void follow(const Plate& plate, const BoneShape& bone);
  void lay_straight(const Plate& plate, const BoneShape& bone);
  std::size_t piece_at(double along) const;

  std::vector<PlateSection> sections_;
  std::vector<Knot> knots_;  // by rising arc length, close enough for straight lines between
};

// Where a screw goes: straight from its hole's centre, or from its own entry, through the bone.
struct ScrewPlacement {
  Eigen::Vector3d hole_centre;  // on the plate's mid-surface, on the axis; beside the plate: on the bone's surface
  Eigen::Vector3d head_top;     // on the plate's top face, on the screw's axis; beside the plate: the head's top
  Eigen::Vector3d underside;    // where the axis leaves the plate; beside the plate: `hole_centre`
  Eigen::Vector3d direction;    // unit, from head to tip
  std::optional<BoneCrossing> bone;
  Eigen::Vector3d tip;
  double slide = 0.0;  // of a compression screw's head towards the fracture on tightening, distal positive
};

// The axis of a screw in a hole, or at an entry beside the plate. A compression screw sits off its hole's centre
// by `slide`, against the way it will go. The tip of a screw through both cortices stands 1 mm proud of the far
// one (common practice, no source); through one cortex it ends at half the canal. Without a crossing of the bone
// the tip is where the axis leaves the plate. Throws std::invalid_argument when the plate has no such hole.
ScrewPlacement place_screw(const Plate& plate, const PlateShape& plate_shape, const BoneShape& bone_shape,
                           const Screw& screw, Length slide);

// Of a screw of a construct, in its own plate, with the slide that its slot leaves.
ScrewPlacement place_screw(const Construct& construct, const PlateShape& plate_shape, const BoneShape& bone_shape,
                           const Screw& screw);

// Way of a compression screw's head along its slot, towards the fracture: distal positive. What was asked for, cut
// to what the slot leaves; 0 for other screws.
Length slide_along(const Screw& screw, const Plate& plate, const PlateShape& plate_shape,
                   Length fracture_position);

}  // namespace gapstrain::models
