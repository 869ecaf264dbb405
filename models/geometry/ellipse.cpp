#include "models/geometry/ellipse.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gapstrain::models {

namespace {

// Nearest point, in the first quadrant, of the ellipse with semi-axes `major` >= `minor` to (along_major,
// along_minor), both at least zero. Its normal through the given point leads to one equation in q, the distance
// from the centre of curvature in terms of that at the short vertex; the equation is convex and falls, so that
// Newton's steps from below do not overshoot. D. Eberly, Distance from a point to an ellipse (2013), from memory.
Eigen::Vector2d nearest_in_quadrant(double major, double minor, double along_major, double along_minor) {
  if (along_minor == 0.0) {
    const double cusp = major - minor * minor / major;  // of the evolute, on the long axis
    if (along_major >= cusp) return {major, 0.0};
    const double share = along_major / cusp;
    return {major * share, minor * std::sqrt(1.0 - share * share)};
  }
  const double excess = (major / minor) * (major / minor) - 1.0;
  const double u = major * along_major / (minor * minor), v = along_minor / minor;
  double low = std::max(v, u - excess);  // either term alone is at most one at the root
  double high = std::hypot(u, v);
  double q = low;
  for (int step = 0; step < 100 && low < high; ++step) {
    const double a = u / (q + excess), b = v / q;
    const double value = a * a + b * b - 1.0;
    (value > 0.0 ? low : high) = q;
    double next = q + 0.5 * value / (a * a / (q + excess) + b * b / q);
    if (!(next > low && next < high)) next = 0.5 * (low + high);
    if (std::abs(next - q) <= 1e-16 * q) break;
    q = next;
  }
  return {(excess + 1.0) * along_major / (q + excess), along_minor / q};
}

}  // namespace

Eigen::Vector2d Ellipse::point(double parameter) const {
  return {semi_y * std::sin(parameter), semi_z * std::cos(parameter)};
}

Eigen::Vector2d Ellipse::at_angle(double around) const {
  const Eigen::Vector2d out(std::sin(around), std::cos(around));
  return out / std::hypot(out.x() / semi_y, out.y() / semi_z);
}

Eigen::Vector2d Ellipse::normal(double parameter) const {
  return Eigen::Vector2d(semi_z * std::sin(parameter), semi_y * std::cos(parameter)).normalized();
}

double Ellipse::speed(double parameter) const {
  return std::hypot(semi_y * std::cos(parameter), semi_z * std::sin(parameter));
}

double Ellipse::curvature(double parameter) const {
  const double v = speed(parameter);
  return semi_y * semi_z / (v * v * v);
}

double Ellipse::smallest_radius_of_curvature() const {
  const double minor = std::min(semi_y, semi_z);
  return minor * minor / std::max(semi_y, semi_z);
}

double Ellipse::nearest_parameter(const Eigen::Vector2d& from) const {
  const double y = std::abs(from.x()), z = std::abs(from.y());
  Eigen::Vector2d foot;
  if (semi_y == semi_z) {
    foot = from.norm() > 0.0 ? Eigen::Vector2d(y, z) : Eigen::Vector2d(0.0, 1.0);
  } else if (semi_y > semi_z) {
    foot = nearest_in_quadrant(semi_y, semi_z, y, z);
  } else {
    foot = nearest_in_quadrant(semi_z, semi_y, z, y).reverse().eval();
  }
  return std::atan2(std::copysign(foot.x() / semi_y, from.x()), std::copysign(foot.y() / semi_z, from.y()));
}

double Ellipse::depth(const Eigen::Vector2d& from) const {
  const double distance = (from - point(nearest_parameter(from))).norm();
  const bool is_inside = std::hypot(from.x() / semi_y, from.y() / semi_z) < 1.0;
  return is_inside ? distance : -distance;
}

}  // namespace gapstrain::models
