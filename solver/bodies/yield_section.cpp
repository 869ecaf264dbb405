#include "solver/bodies/yield_section.h"

#include <algorithm>
#include <cmath>

namespace gapstrain::solver {

HardeningCurve::Point HardeningCurve::at(double flow_so_far) const {
  const auto after = std::upper_bound(flow.begin(), flow.end(), flow_so_far);
  if (after == flow.end() || flow.size() == 1) return {share.back() + slope * (flow_so_far - flow.back()), slope};
  const auto k = static_cast<std::size_t>(std::max<std::ptrdiff_t>(after - flow.begin(), 1));
  const double rise = (share[k] - share[k - 1]) / (flow[k] - flow[k - 1]);
  return {share[k - 1] + rise * (flow_so_far - flow[k - 1]), rise};
}

Demand demand(const Resultants& shares) {
  constexpr double rounding = 4e-4;
  const double n = shares(0);
  const Eigen::Vector3d across = shares.segment<3>(1);  // shear, shear, torsion
  const Eigen::Vector2d bending = shares.tail<2>();
  const double m = std::sqrt(bending.squaredNorm() + rounding);
  const double root = std::sqrt(m * m + 4.0 * n * n);
  const double y = 0.5 * (m + root);
  Demand found;
  found.value = std::sqrt(y * y + across.squaredNorm());

  Resultants of_y = Resultants::Zero();
  const double by_m = 0.5 * (1.0 + m / root);
  of_y(0) = 2.0 * n / root;
  of_y.tail<2>() = by_m / m * bending;
  found.gradient = y * of_y;
  found.gradient.segment<3>(1) = across;
  found.gradient /= found.value;

  const double cube = root * root * root;
  const Eigen::Vector2d along_m = bending / m;
  Eigen::Matrix<double, 6, 6> y_curvature = Eigen::Matrix<double, 6, 6>::Zero();
  y_curvature(0, 0) = 2.0 * m * m / cube;
  y_curvature.block<1, 2>(0, 4) = -2.0 * m * n / cube * along_m.transpose();
  y_curvature.block<2, 1>(4, 0) = y_curvature.block<1, 2>(0, 4).transpose();
  y_curvature.bottomRightCorner<2, 2>() = 2.0 * n * n / cube * along_m * along_m.transpose() +
                                          by_m / m * (Eigen::Matrix2d::Identity() - along_m * along_m.transpose());
  found.curvature = of_y * of_y.transpose() + y * y_curvature - found.gradient * found.gradient.transpose();
  found.curvature.block<3, 3>(1, 1) += Eigen::Matrix3d::Identity();
  found.curvature /= found.value;
  return found;
}

}  // namespace gapstrain::solver
