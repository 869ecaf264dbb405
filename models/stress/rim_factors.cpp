#include "models/stress/rim_factors.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace gapstrain::models {

namespace {

using Row = std::array<double, 7>;

constexpr Row radius_over_thickness_of_columns = {0.3, 0.4, 0.5, 0.6, 0.8, 1.0, 1.5};
constexpr Row twist_030 = {.828, .846, .860, .871, .889, .903, .926};
constexpr Row twist_034 = {.814, .835, .851, .864, .885, .899, .924};
constexpr Row in_plane_shear_030 = {.823, .848, .872, .892, .924, .947, .979};
// Of one-way tension, whose rim stress is 1 + 2 cos 2 phi times the far stress.
constexpr Row tension_inside_030 = {1.057, 1.061, 1.060, 1.058, 1.051, 1.044, 1.033};
constexpr Row tension_inside_034 = {1.066, 1.071, 1.070, 1.067, 1.058, 1.050, 1.036};

double interpolate(const Row& values, double at) {
  const auto& grid = radius_over_thickness_of_columns;
  const double inside = std::clamp(at, grid.front(), grid.back());
  const auto upper =
      std::max<std::ptrdiff_t>(1, std::lower_bound(grid.begin(), grid.end(), inside) - grid.begin());
  const auto k = static_cast<std::size_t>(upper);
  const double share = (inside - grid[k - 1]) / (grid[k] - grid[k - 1]);
  return (1.0 - share) * values[k - 1] + share * values[k];
}

// The varying part scaled, the even part kept.
Eigen::ArrayXd scaled(const Eigen::ArrayXd& stress, double factor) {
  const double even = stress.mean();
  return even + factor * (stress - even);
}

}  // namespace

RimFactors rim_factors(double radius_over_thickness, double poissons_ratio) {
  const double share = std::clamp((poissons_ratio - 0.30) / 0.04, 0.0, 1.0);
  const auto between = [&](const Row& at_030, const Row& at_034) {
    return (1.0 - share) * interpolate(at_030, radius_over_thickness) +
           share * interpolate(at_034, radius_over_thickness);
  };
  return {between(twist_030, twist_034), interpolate(in_plane_shear_030, radius_over_thickness),
          (3.0 * between(tension_inside_030, tension_inside_034) - 1.0) / 2.0};
}

double solid_over_shell(const Eigen::VectorXd& top, const Eigen::VectorXd& bottom, double radius_over_thickness,
                        double poissons_ratio) {
  const RimFactors factors = rim_factors(radius_over_thickness, poissons_ratio);
  const Eigen::ArrayXd membrane = 0.5 * (top + bottom).array();
  const Eigen::ArrayXd at_surface = scaled(membrane, factors.membrane_surface);
  const Eigen::ArrayXd bending = scaled(0.5 * (top - bottom).array(), factors.bending_surface);
  const double shell = std::max(top.cwiseAbs().maxCoeff(), bottom.cwiseAbs().maxCoeff());
  if (shell == 0.0) return 1.0;
  const double solid = std::max({(at_surface + bending).abs().maxCoeff(), (at_surface - bending).abs().maxCoeff(),
                                 scaled(membrane, factors.membrane_inside).abs().maxCoeff()});
  return solid / shell;
}

}  // namespace gapstrain::models
