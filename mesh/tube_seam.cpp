#include "mesh/tube_seam.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace gapstrain::mesh {

namespace {

constexpr int candidates = 360;

// Least distance round the tube from the line at s to a spot's edge, mm.
double clearance(const UnrolledTube& tube, double s) {
  double least = 0.5 * tube.perimeter;
  for (const Spot& spot : tube.spots) {
    const double arm = std::abs(std::remainder(spot.s - s, tube.perimeter));
    least = std::min(least, arm - spot.radius_s);
  }
  return least;
}

}  // namespace

double choose_seam(const UnrolledTube& tube) {
  // Cells between seam and spot want room for an element; beyond two it no longer matters next to the cut's slope.
  const double wanted = 2.0 * tube.size_max;
  const double needed = 0.25 * tube.size_max;
  const double step = tube.perimeter / candidates;
  double best = -1.0;
  double least_cost = std::numeric_limits<double>::infinity();
  for (int i = 0; i < candidates; ++i) {
    const double s = i * step;
    const double clear = clearance(tube, s);
    if (clear < needed) continue;
    const double slope = tube.cut ? ((*tube.cut)(s + step) - (*tube.cut)(s - step)) / (2.0 * step) : 0.0;
    const double cost =
        std::abs(std::atan(slope)) + 1.5 * std::max(0.0, 1.0 - clear / wanted) - 0.1 * clear / tube.perimeter;
    if (cost < least_cost) {
      least_cost = cost;
      best = s;
    }
  }
  if (best < 0.0) throw MeshError("The spots leave no line along the tube free, so that it cannot be slit open.");
  return best;
}

}  // namespace gapstrain::mesh
