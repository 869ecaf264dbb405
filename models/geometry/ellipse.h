// The plane geometry of a bone's section: an ellipse and the curves parallel to it.
#pragma once

#include <Eigen/Core>

namespace gapstrain::models {

// Points are (y, z). The parameter runs from the +z vertex (0) towards +y: (semi_y sin, semi_z cos).
struct Ellipse {
  double semi_y = 1.0, semi_z = 1.0;

  Eigen::Vector2d point(double parameter) const;
  Eigen::Vector2d at_angle(double around) const;   // seen from the centre, from +z towards +y
  Eigen::Vector2d normal(double parameter) const;  // unit, outward
  double speed(double parameter) const;            // arc length per parameter
  double curvature(double parameter) const;        // positive
  double smallest_radius_of_curvature() const;

  // Of the point of the ellipse nearest to a given point, in (-pi, pi]. At a point of the evolute, where several
  // are equally near, any one of them.
  double nearest_parameter(const Eigen::Vector2d& from) const;

  // Distance from the ellipse, positive inside.
  double depth(const Eigen::Vector2d& from) const;
};

}  // namespace gapstrain::models
