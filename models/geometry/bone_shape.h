// The bone's shaft as a surface in construct axes: x along the straight line between its ends (0 proximal, distal
// positive), z towards the plate, y = z cross x. Plain numbers in mm: this is where parts turn into geometry.
//
// The directions of a right limb (a left one is its mirror image, +y then points the other way):
//   plate on    cranial   caudal    lateral   medial
//   +z is       cranial   caudal    lateral   medial
//   +y is       medial    lateral   cranial   caudal
#pragma once

#include "mesh/roll_up.h"
#include "models/geometry/ellipse.h"
#include "models/geometry/monotone_cubic.h"
#include "models/parts/bone.h"
#include "models/parts/plate.h"

#include <Eigen/Core>

#include <optional>
#include <vector>

namespace gapstrain::models {

// The elliptic section at a place of the axis. Semi-axes are of the outer surface.
struct BoneSection {
  double semi_y = 0.0, semi_z = 0.0;
  double wall = 0.0;
  Eigen::Vector3d centre;   // on the axis
  Eigen::Vector3d tangent;  // unit, of the axis, towards distal; the section is perpendicular to it
  Eigen::Vector3d y_axis;   // unit, of the ellipse; y_axis = z_axis cross tangent
  Eigen::Vector3d z_axis;   // unit, of the ellipse, in the plane of the construct's z and the tangent

  Ellipse outer() const { return {semi_y, semi_z}; }
  Eigen::Vector3d point(const Eigen::Vector2d& in_section) const;  // of (y, z) in the section
  Eigen::Vector2d in_section(const Eigen::Vector3d& point) const;  // (y, z) of a point projected onto it
};

class BoneShape {
 public:
  // Needs at least one station, rising positions and sizes that `check` finds no error in.
  BoneShape(const Bone& bone, Aspect plate_aspect);

  double length() const { return length_; }

  // Section by its axis coordinate x in [0, length]. Beyond, the end section pushed on along x.
  BoneSection section(double x) const;

  // Section whose plane holds the point; beyond the ends the end section.
  BoneSection section_through(const Eigen::Vector3d& point) const;

  // The unrolled mid-surface: u in [0, perimeter()) runs from the plate's side towards +y in the arc length of the
  // largest section's mid-curve, one table for all x, so that lines of constant u run along the bone.
  double perimeter() const { return perimeter_; }
  mesh::SurfacePoint mid_surface(double u, double x) const;

  // Unrolled coordinates of the mid-surface point nearest to a given point near it.
  Eigen::Vector2d unrolled(const Eigen::Vector3d& point) const;

  // Depth below the outer surface along its normal; negative outside. Uses the section through the point.
  double depth(const Eigen::Vector3d& point) const;

  // Height z of the outer surface above the point (x, 0, 0): the plate's bed. Where the bow carries the bone clear
  // of y = 0, the height of its side.
  double bed(double x) const;

  // Larger than the distance of any point of the bone from the x axis.
  double reach() const { return reach_; }

 private:
  double axis_coordinate(const Eigen::Vector3d& point) const;
  double parameter(double u) const;  // of the ellipse
  double arc_length(double parameter) const;
  double mid_speed(const BoneSection& section, double parameter) const;
  void tabulate_arc_length();

  double length_ = 0.0, perimeter_ = 0.0, reach_ = 0.0;
  MonotoneCubic semi_y_, semi_z_, wall_, bow_y_, bow_z_;
  BoneSection largest_;
  std::vector<double>
      arc_lengths_;  // of the largest mid-curve at equal steps of the ellipse's parameter, 0 to 2 pi
};

// Places where a straight line meets the walls; `entry` walks along `direction` from outside.
struct WallCrossing {
  Eigen::Vector3d outer, middle, inner;  // on the outer surface, mid-surface and inner surface
};

struct BoneCrossing {
  WallCrossing near;
  WallCrossing far;
};

// Nothing when the line misses the canal (it then has no two clear walls), leaves through an end of the bone or
// runs within 6 degrees of the bone's axis. `near` is met first along `direction`.
std::optional<BoneCrossing> cross_bone(const BoneShape& shape, const Eigen::Vector3d& from,
                                       const Eigen::Vector3d& direction);

}  // namespace gapstrain::models
