#include "models/assembly/root_flexibility.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace gapstrain::models {

namespace {

// Own axisymmetric unit-cell computations (Fourier series around the shaft, converged to about 1 %).
constexpr std::array<double, 3> wall_over_radius_of_rows = {1.5, 2.1, 3.0};
constexpr std::array<double, 5> stiffness_ratio_of_columns = {1.0, 3.0, 6.5, 11.0, 20.0};
using Table = std::array<std::array<double, 5>, 3>;
// clang-format off
constexpr Table tilt_table    = {{{.45, .56, .62, .62, .60}, {.45, .61, .71, .75, .77}, {.45, .68, .84, .93, 1.01}}};
constexpr Table twist_table   = {{{.26, .34, .41, .45, .48}, {.26, .39, .49, .55, .61}, {.26, .43, .57, .68, .78}}};
constexpr Table shift_table   = {{{.22, .22, .22, .19, .14}, {.22, .26, .27, .25, .20}, {.22, .33, .40, .38, .36}}};
constexpr Table stretch_table = {{{1.8, 1.3, .70, 0.0, 0.0}, {.89, .70, .36, 0.0, 0.0}, {.66, .60, .40, 0.0, 0.0}}};
// clang-format on

// What a rim at 1.25 shaft radii adds, same material; it grows with the ring's width.
constexpr RootFractions rim_addition = {0.03, 0.02, 0.08, 0.0};
constexpr std::array<double, 3> rim_stretch_addition = {1.2, 0.57, 0.32};
constexpr double rim_over_shaft_of_addition = 1.25;

struct Place {
  std::size_t lower = 0;
  double share = 0.0;  // of the upper neighbour
};

template <std::size_t n>
Place place(const std::array<double, n>& grid, double value) {
  const double inside = std::clamp(value, grid.front(), grid.back());
  std::size_t lower = 0;
  while (lower + 2 < n && grid[lower + 1] <= inside) ++lower;
  return {lower, (inside - grid[lower]) / (grid[lower + 1] - grid[lower])};
}

double interpolate(const Table& table, Place row, Place column) {
  const auto along = [&](std::size_t r) {
    return (1.0 - column.share) * table[r][column.lower] + column.share * table[r][column.lower + 1];
  };
  return (1.0 - row.share) * along(row.lower) + row.share * along(row.lower + 1);
}

}  // namespace

RootFractions wall_root(double wall_over_radius, double stiffness_ratio) {
  std::array<double, 5> log_ratio{};
  std::transform(stiffness_ratio_of_columns.begin(), stiffness_ratio_of_columns.end(), log_ratio.begin(),
                 [](double ratio) { return std::log(ratio); });
  const Place row = place(wall_over_radius_of_rows, wall_over_radius);
  const Place column = place(log_ratio, std::log(stiffness_ratio));
  return {interpolate(tilt_table, row, column), interpolate(twist_table, row, column),
          interpolate(shift_table, row, column), interpolate(stretch_table, row, column)};
}

RootFractions rim_root(double wall_over_radius, double stiffness_ratio, double rim_over_shaft) {
  RootFractions fractions = wall_root(wall_over_radius, stiffness_ratio);
  const double width = std::max(rim_over_shaft - 1.0, 0.0) / (rim_over_shaft_of_addition - 1.0);
  const Place row = place(wall_over_radius_of_rows, wall_over_radius);
  fractions.tilt += width * rim_addition.tilt;
  fractions.twist += width * rim_addition.twist;
  fractions.shift += width * rim_addition.shift;
  fractions.stretch += width * ((1.0 - row.share) * rim_stretch_addition[row.lower] +
                                row.share * rim_stretch_addition[row.lower + 1]);
  return fractions;
}

solver::Matrix6 root_flexibility(const RootFractions& fractions, const solver::BeamSection& section, double radius,
                                 const Eigen::Vector3d& axis) {
  const Eigen::Matrix3d along = axis * axis.transpose();
  const Eigen::Matrix3d across = Eigen::Matrix3d::Identity() - along;
  solver::Matrix6 flexibility = solver::Matrix6::Zero();
  flexibility.topLeftCorner<3, 3>() =
      radius * (fractions.stretch / section.axial * along + fractions.shift / section.shear * across);
  flexibility.bottomRightCorner<3, 3>() =
      radius * (fractions.twist / section.torsion * along + fractions.tilt / section.bending * across);
  return flexibility;
}

}  // namespace gapstrain::models
