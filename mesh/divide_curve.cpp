#include "mesh/divide_curve.h"

#include <algorithm>
#include <cmath>

namespace gapstrain::mesh {

std::vector<double> divide_curve(const std::function<Eigen::Vector2d(double)>& curve, double start, double end,
                                 const SizeField& size, int least) {
  // The integral by the midpoint rule; 400 pieces keep its error far below one edge for curves of 100 edges.
  constexpr int pieces = 400;
  std::vector<double> parameters(pieces + 1), edges(pieces + 1, 0.0);
  Eigen::Vector2d previous = curve(start);
  parameters[0] = start;
  for (int i = 1; i <= pieces; ++i) {
    parameters[i] = start + (end - start) * i / pieces;
    const Eigen::Vector2d next = curve(parameters[i]);
    edges[i] = edges[i - 1] + (next - previous).norm() / size(0.5 * (previous + next));
    previous = next;
  }

  const int count = std::max(least + least % 2, 2 * static_cast<int>(std::lround(0.5 * edges.back())));
  std::vector<double> division{start};
  for (int i = 1, piece = 1; i < count; ++i) {
    const double target = edges.back() * i / count;
    while (edges[piece] < target) ++piece;
    const double share = (target - edges[piece - 1]) / (edges[piece] - edges[piece - 1]);
    division.push_back(parameters[piece - 1] + share * (parameters[piece] - parameters[piece - 1]));
  }
  division.push_back(end);
  return division;
}

}  // namespace gapstrain::mesh
