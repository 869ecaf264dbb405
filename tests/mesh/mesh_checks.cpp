#include "tests/mesh/mesh_checks.h"

#include "mesh/roll_up.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

namespace gapstrain::mesh {

ShellMesh as_shell(const FlatMesh& flat) {
  return roll_up(
      flat,
      [](double x, double y) {
        return SurfacePoint{{x, y, 0.0}, {0.0, 0.0, 1.0}, 1.0, 1.0, 0.0};
      },
      0.0);
}

ShellMesh as_tube(const FlatMesh& flat, double perimeter) {
  const double radius = perimeter / (2.0 * std::numbers::pi);
  const auto surface = [radius](double s, double x) {
    const double angle = s / radius;
    const Eigen::Vector3d normal(0.0, std::cos(angle), std::sin(angle));
    return SurfacePoint{Eigen::Vector3d(x, 0.0, 0.0) + radius * normal, normal, 1.0, 1.0, 1.0 / radius};
  };
  return roll_up(flat, surface, perimeter);
}

std::map<std::pair<int, int>, int> edge_uses(const FlatMesh& mesh) {
  std::map<std::pair<int, int>, int> uses;
  const auto count_cell = [&uses](const auto& cell) {
    for (std::size_t i = 0; i < cell.size(); ++i) ++uses[std::minmax(cell[i], cell[(i + 1) % cell.size()])];
  };
  for (const Quad& quad : mesh.quads) count_cell(quad);
  for (const Triangle& triangle : mesh.triangles) count_cell(triangle);
  return uses;
}

int boundary_edges(const FlatMesh& mesh) {
  int boundary = 0;
  for (const auto& [edge, uses] : edge_uses(mesh)) {
    REQUIRE(uses <= 2);
    boundary += uses == 1;
  }
  return boundary;
}

double area(const FlatMesh& mesh) {
  double sum = 0.0;
  const auto add_cell = [&](const auto& cell) {
    for (std::size_t i = 0; i < cell.size(); ++i) {
      const Eigen::Vector2d a = mesh.nodes.row(cell[i]), b = mesh.nodes.row(cell[(i + 1) % cell.size()]);
      sum += 0.5 * (a.x() * b.y() - a.y() * b.x());
    }
  };
  for (const Quad& quad : mesh.quads) add_cell(quad);
  for (const Triangle& triangle : mesh.triangles) add_cell(triangle);
  return sum;
}

bool is_same(const FlatMesh& a, const FlatMesh& b) {
  return a.nodes.rows() == b.nodes.rows() && a.nodes == b.nodes && a.quads == b.quads &&
         a.triangles == b.triangles && a.groups == b.groups;
}

std::string numbered(std::string stem, int number) { return stem.append(std::to_string(number)); }

void require_good_shape(const ShellMesh& mesh) {
  const Quality figures = quality(mesh);
  CAPTURE(figures.quads, figures.triangles, figures.smallest_angle, figures.largest_angle,
          figures.smallest_scaled_jacobian);
  CHECK(figures.smallest_angle > 20.0 * std::numbers::pi / 180.0);
  CHECK(figures.smallest_scaled_jacobian > 0.2);
  CHECK(figures.mean_scaled_jacobian > 0.85);
}

}  // namespace gapstrain::mesh
