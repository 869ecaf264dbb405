#include "models/assembly/surface_place.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace gapstrain::models {

namespace {

// Line against triangle: Moeller & Trumbore 1997, J Graphics Tools 2(1):21, sides alike. A little over the edge
// counts, so that a line through an edge meets one of its two triangles.
std::optional<SurfacePlace> meet_triangle(const mesh::ShellMesh& mesh, const std::array<int, 3>& corners,
                                          const Eigen::Vector3d& start, const Eigen::Vector3d& direction) {
  constexpr double over = 1e-9;
  const auto corner = [&](std::size_t k) -> Eigen::Vector3d { return mesh.nodes.row(corners[k]).transpose(); };
  const Eigen::Vector3d one = corner(1) - corner(0), two = corner(2) - corner(0);
  const Eigen::Vector3d normal = direction.cross(two);
  const double determinant = one.dot(normal);
  if (std::abs(determinant) < 1e-12 * one.norm() * two.norm()) return std::nullopt;
  const Eigen::Vector3d arm = start - corner(0);
  const double u = arm.dot(normal) / determinant;
  const Eigen::Vector3d turned = arm.cross(one);
  const double v = direction.dot(turned) / determinant;
  if (u < -over || v < -over || u + v > 1.0 + over) return std::nullopt;
  SurfacePlace place;
  place.nodes.assign(corners.begin(), corners.end());
  place.weights = {1.0 - u - v, u, v};
  place.along = two.dot(turned) / determinant;
  place.position = start + place.along * direction;
  return place;
}

}  // namespace

std::vector<SurfacePlace> meet(const mesh::ShellMesh& mesh, const Eigen::Vector3d& start,
                               const Eigen::Vector3d& direction) {
  std::vector<SurfacePlace> places;
  const auto add = [&](int a, int b, int c) {
    const auto place = meet_triangle(mesh, {a, b, c}, start, direction);
    const auto is_known = [&](const SurfacePlace& other) { return std::abs(other.along - place->along) < 1e-6; };
    if (place && std::none_of(places.begin(), places.end(), is_known)) places.push_back(*place);
  };
  for (const auto& quad : mesh.quads) {
    add(quad[0], quad[1], quad[2]);
    add(quad[0], quad[2], quad[3]);
  }
  for (const auto& triangle : mesh.triangles) add(triangle[0], triangle[1], triangle[2]);
  std::sort(places.begin(), places.end(), [](const auto& a, const auto& b) { return a.along < b.along; });
  return places;
}

std::optional<solver::Port> outer_port(const solver::Shell& bone, const Eigen::Vector3d& start,
                                       const Eigen::Vector3d& direction) {
  const auto places = meet(*bone.mesh, start, direction);
  if (places.empty() || places.back().along <= 0.0) return std::nullopt;
  const SurfacePlace& place = places.back();
  double wall = 0.0;
  for (std::size_t k = 0; k < place.nodes.size(); ++k)
    wall += place.weights[k] * bone.mesh->thickness(place.nodes[k]);
  return solver::point_port(bone, place.nodes, place.weights, 0.5 * wall);
}

}  // namespace gapstrain::models
