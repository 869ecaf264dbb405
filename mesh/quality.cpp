#include "mesh/quality.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>
#include <utility>

namespace gapstrain::mesh {

namespace {

template <typename Cell>
double corner_angle(const ShellMesh& mesh, const Cell& cell, std::size_t corner) {
  const std::size_t count = cell.size();
  const Eigen::RowVector3d here = mesh.nodes.row(cell[corner]);
  const Eigen::RowVector3d next = mesh.nodes.row(cell[(corner + 1) % count]) - here;
  const Eigen::RowVector3d previous = mesh.nodes.row(cell[(corner + count - 1) % count]) - here;
  const Eigen::RowVector3d normal = next.cross(previous);
  // Against the director a corner that is folded in counts with its outer angle.
  const double turn = normal.dot(mesh.directors.row(cell[corner])) < 0.0 ? -normal.norm() : normal.norm();
  const double angle = std::atan2(turn, next.dot(previous));
  return angle < 0.0 ? angle + 2.0 * std::numbers::pi : angle;
}

}  // namespace

Quality quality(const ShellMesh& mesh) {
  Quality result;
  result.quads = static_cast<int>(mesh.quads.size());
  result.triangles = static_cast<int>(mesh.triangles.size());
  result.smallest_angle = 2.0 * std::numbers::pi;
  result.smallest_scaled_jacobian = 1.0;
  const auto count_angle = [&result](double angle) {
    result.smallest_angle = std::min(result.smallest_angle, angle);
    result.largest_angle = std::max(result.largest_angle, angle);
  };
  double sum = 0.0;
  for (const Quad& quad : mesh.quads) {
    double scaled_jacobian = 1.0;
    for (std::size_t corner = 0; corner < quad.size(); ++corner) {
      const double angle = corner_angle(mesh, quad, corner);
      count_angle(angle);
      // The corner's Jacobian over the lengths of its two edges is the sine of its angle.
      scaled_jacobian = std::min(scaled_jacobian, std::sin(angle));
    }
    result.smallest_scaled_jacobian = std::min(result.smallest_scaled_jacobian, scaled_jacobian);
    sum += scaled_jacobian;
  }
  for (const Triangle& triangle : mesh.triangles)
    for (std::size_t corner = 0; corner < triangle.size(); ++corner)
      count_angle(corner_angle(mesh, triangle, corner));
  if (result.quads > 0) result.mean_scaled_jacobian = sum / result.quads;
  return result;
}

int euler_characteristic(const ShellMesh& mesh) {
  std::set<int> nodes;
  std::set<std::pair<int, int>> edges;
  const auto count_cell = [&](const auto& cell) {
    for (std::size_t i = 0; i < cell.size(); ++i) {
      nodes.insert(cell[i]);
      edges.insert(std::minmax(cell[i], cell[(i + 1) % cell.size()]));
    }
  };
  for (const Quad& quad : mesh.quads) count_cell(quad);
  for (const Triangle& triangle : mesh.triangles) count_cell(triangle);
  return static_cast<int>(nodes.size()) - static_cast<int>(edges.size()) +
         static_cast<int>(mesh.quads.size() + mesh.triangles.size());
}

}  // namespace gapstrain::mesh
