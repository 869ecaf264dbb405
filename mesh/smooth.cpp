#include "mesh/smooth.h"

#include "mesh/mesh_error.h"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <limits>

namespace gapstrain::mesh {

namespace {

// Squared condition number of the corner between edges a and b (a to b counter-clockwise), infinite when folded.
double corner_condition(const Eigen::Vector2d& a, const Eigen::Vector2d& b) {
  const double jacobian = a.x() * b.y() - a.y() * b.x();
  if (jacobian <= 0.0) return std::numeric_limits<double>::infinity();
  const double condition = 0.5 * (a.squaredNorm() + b.squaredNorm()) / jacobian;
  return condition * condition;
}

// The other three nodes of a quad, counter-clockwise from the node looked at, relative to its first place.
struct Corner {
  Eigen::Vector2d next, opposite, previous;

  double condition(const Eigen::Vector2d& place) const {
    return corner_condition(next - place, previous - place) + corner_condition(opposite - next, place - next) +
           corner_condition(previous - opposite, next - opposite) +
           corner_condition(place - previous, opposite - previous);
  }
};

double sum_conditions(const std::vector<Corner>& corners, const Eigen::Vector2d& place) {
  double sum = 0.0;
  for (const Corner& corner : corners) sum += corner.condition(place);
  return sum;
}

// The best of a few trial moves, zero when none is better than staying.
Eigen::Vector2d best_move(const std::vector<Corner>& corners) {
  Eigen::Vector2d middle = Eigen::Vector2d::Zero();
  double span = std::numeric_limits<double>::infinity();
  for (const Corner& corner : corners) {
    middle += 0.5 * (corner.next + corner.previous) / static_cast<double>(corners.size());
    span = std::min({span, corner.next.squaredNorm(), corner.previous.squaredNorm()});
  }
  Eigen::Vector2d best = Eigen::Vector2d::Zero();
  double least = sum_conditions(corners, best);
  const auto attempt = [&](const Eigen::Vector2d& move) {
    const double sum = sum_conditions(corners, move);
    if (sum < least) {
      least = sum;
      best = move;
    }
  };
  attempt(middle);
  attempt(0.5 * middle);
  for (double step = 0.2 * std::sqrt(span); step > 0.02 * std::sqrt(span); step *= 0.5) {
    const Eigen::Vector2d from = best;
    for (const Eigen::Vector2d& direction : {Eigen::Vector2d(1.0, 0.0), Eigen::Vector2d(0.0, 1.0)}) {
      attempt(from + step * direction);
      attempt(from - step * direction);
    }
  }
  return best;
}

void check_unfolded(const FlatMesh& mesh, const Quad& quad, double period) {
  const auto side = [&](int from, int to) -> Eigen::Vector2d {
    Eigen::Vector2d arm = mesh.nodes.row(quad[to]) - mesh.nodes.row(quad[from]);
    if (period > 0.0) arm.x() -= period * std::round(arm.x() / period);
    return arm;
  };
  for (int corner = 0; corner < 4; ++corner)
    if (!std::isfinite(corner_condition(side(corner, (corner + 1) % 4), side(corner, (corner + 3) % 4))))
      throw MeshError(
          fmt::format("The mesh folds at ({:.4g}, {:.4g}) mm, where too little room is left for elements.",
                      mesh.nodes(quad[corner], 0), mesh.nodes(quad[corner], 1)));
}

}  // namespace

void smooth(FlatMesh& mesh, const std::vector<bool>& fixed, double period, int sweeps) {
  const auto node_count = static_cast<std::size_t>(mesh.nodes.rows());
  std::vector<std::vector<std::pair<int, int>>> quads_of(node_count);  // (quad, corner)
  for (int quad = 0; quad < static_cast<int>(mesh.quads.size()); ++quad)
    for (int corner = 0; corner < 4; ++corner) quads_of[mesh.quads[quad][corner]].emplace_back(quad, corner);

  std::vector<Corner> corners;
  for (int sweep = 0; sweep < sweeps; ++sweep) {
    for (std::size_t node = 0; node < node_count; ++node) {
      if (fixed[node]) continue;
      const Eigen::Vector2d here = mesh.nodes.row(static_cast<Eigen::Index>(node));
      const auto from_here = [&](int other) -> Eigen::Vector2d {
        Eigen::Vector2d arm = mesh.nodes.row(other).transpose() - here;
        if (period > 0.0) arm.x() -= period * std::round(arm.x() / period);
        return arm;
      };
      corners.clear();
      for (const auto& [quad, corner] : quads_of[node]) {
        const Quad& nodes = mesh.quads[quad];
        corners.push_back({from_here(nodes[(corner + 1) % 4]), from_here(nodes[(corner + 2) % 4]),
                           from_here(nodes[(corner + 3) % 4])});
      }
      mesh.nodes.row(static_cast<Eigen::Index>(node)) += best_move(corners).transpose();
    }
  }
  for (const Quad& quad : mesh.quads) check_unfolded(mesh, quad, period);
}

}  // namespace gapstrain::mesh
