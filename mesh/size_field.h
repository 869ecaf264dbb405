// Wanted edge length in the plane: small at sources, growing with the distance from them. Private to mesh/.
#pragma once

#include <Eigen/Core>

#include <vector>

namespace gapstrain::mesh {

// All points within `radius` of the segment from `start` to `end`: a disk when both are equal, a slot, a line.
struct Capsule {
  Eigen::Vector2d start, end;
  double radius = 0.0;  // mm

  double distance(const Eigen::Vector2d& point) const;  // mm, 0 inside
};

// The smallest capsule round an axis-parallel ellipse.
Capsule capsule_round_ellipse(const Eigen::Vector2d& centre, double half_first, double half_second);

class SizeField {
 public:
  SizeField(double size_max, double growth) : size_max_(size_max), growth_(growth) {}

  // Edge length `size` in the capsule and `growth` more for each mm away from it.
  void add(const Capsule& capsule, double size);
  double operator()(const Eigen::Vector2d& point) const;
  double size_max() const { return size_max_; }
  // Farther away than this a source of that size has no effect, mm.
  double reach(double size) const { return (size_max_ - size) / growth_; }

 private:
  struct Source {
    Capsule capsule;
    double size = 0.0;
  };
  double size_max_, growth_;
  std::vector<Source> sources_;
};

}  // namespace gapstrain::mesh
