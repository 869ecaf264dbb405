#include "models/geometry/bone_shape.h"

#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <utility>

namespace gapstrain::models {

namespace {

// Place of the largest value of a function that rises once and then falls, by golden section.
template <class Function>
double summit(Function f, double low, double high) {
  const double share = 0.5 * (3.0 - std::sqrt(5.0));
  double a = low + share * (high - low), b = high - share * (high - low);
  double at_a = f(a), at_b = f(b);
  while (high - low > 1e-9 * (std::abs(low) + std::abs(high) + 1.0)) {
    if (at_a < at_b) {
      low = std::exchange(a, b);
      at_a = at_b;
      b = high - share * (high - low);
      at_b = f(b);
    } else {
      high = std::exchange(b, a);
      at_b = at_a;
      a = low + share * (high - low);
      at_a = f(a);
    }
  }
  return 0.5 * (low + high);
}

template <class Function>
double root(Function f, double low, double high) {
  std::uintmax_t steps = 100;
  const auto [a, b] =
      boost::math::tools::toms748_solve(f, low, high, boost::math::tools::eps_tolerance<double>(48), steps);
  return 0.5 * (a + b);
}

}  // namespace

std::optional<BoneCrossing> cross_bone(const BoneShape& shape, const Eigen::Vector3d& from,
                                       const Eigen::Vector3d& direction) {
  const Eigen::Vector3d along = direction.normalized();
  const double across = std::hypot(along.y(), along.z());
  if (across < 0.1) return std::nullopt;
  const auto at = [&](double s) -> Eigen::Vector3d { return from + s * along; };

  // Outside the bone at both ends of the bracket: further from the x axis than any point of the bone. The depth
  // under a convex surface is concave along a line, so it has one summit.
  const double closest = -(from.y() * along.y() + from.z() * along.z()) / (across * across);
  const double low = closest - shape.reach() / across, high = closest + shape.reach() / across;
  const auto canal_depth = [&](double s) {
    const Eigen::Vector3d point = at(s);
    const BoneSection here = shape.section_through(point);
    return here.outer().depth(here.in_section(point)) - here.wall;
  };
  const double deepest = summit(canal_depth, low, high);
  if (!(canal_depth(deepest) > 1e-6)) return std::nullopt;

  const auto place = [&](double walls, double outside) {
    const auto excess = [&](double s) {
      const Eigen::Vector3d point = at(s);
      const BoneSection here = shape.section_through(point);
      return here.outer().depth(here.in_section(point)) - walls * here.wall;
    };
    return at(root(excess, std::min(outside, deepest), std::max(outside, deepest)));
  };
  const BoneCrossing crossing{{place(0.0, low), place(0.5, low), place(1.0, low)},
                              {place(0.0, high), place(0.5, high), place(1.0, high)}};
  for (const Eigen::Vector3d* point :
       {&crossing.near.outer, &crossing.near.inner, &crossing.far.outer, &crossing.far.inner}) {
    const double distal = shape.section(shape.length()).tangent.dot(*point - shape.section(shape.length()).centre);
    const double proximal = shape.section(0.0).tangent.dot(*point - shape.section(0.0).centre);
    if (proximal < 0.0 || distal > 0.0) return std::nullopt;
  }
  return crossing;
}

}  // namespace gapstrain::models
