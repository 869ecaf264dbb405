#include "mesh/plane_mesher.h"

#include "tests/mesh/mesh_checks.h"

#include <catch2/catch.hpp>

namespace gapstrain::mesh {

namespace {

// One closed curve through the corners, each side halved.
PlaneOutline polygon(const std::vector<Eigen::Vector2d>& corners) {
  PlaneOutline outline;
  std::vector<int> curve;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    curve.push_back(outline.add_point(corners[i]));
    curve.push_back(outline.add_point(0.5 * (corners[i] + corners[(i + 1) % corners.size()])));
  }
  curve.push_back(curve.front());
  outline.curves.push_back(curve);
  outline.faces.push_back({{{{0, true}}}, {}});
  return outline;
}

}  // namespace

TEST_CASE("a face is meshed with quads on the given boundary nodes only", "[mesh][plane]") {
  const GmshSession session;
  PlaneOutline outline = polygon({{0.0, 0.0}, {1.3, -0.1}, {2.6, 0.0}, {2.9, 1.2}, {1.4, 2.0}, {0.2, 1.1}});
  outline.faces.front().inner_nodes.push_back(outline.add_point({1.1, 0.7}));
  const PlaneMesh mesh = mesh_plane(session, outline, SizeField(0.6, 0.2));
  CHECK(mesh.mesh.triangles.empty());
  CHECK(boundary_edges(mesh.mesh) == 12);
  CHECK(mesh.mesh.nodes.row(12) == Eigen::RowVector2d(1.1, 0.7));
  bool is_used = false;
  for (const Quad& quad : mesh.mesh.quads)
    is_used = is_used || std::find(quad.begin(), quad.end(), 12) != quad.end();
  CHECK(is_used);
}

TEST_CASE("Gmsh's own fault arrives as a MeshError", "[mesh][plane]") {
  const GmshSession session;
  PlaneOutline bow_tie = polygon({{0.0, 0.0}, {2.1, 2.2}, {2.0, 0.0}, {0.1, 2.3}});
  CHECK_THROWS_AS(mesh_plane(session, bow_tie, SizeField(0.6, 0.2)), MeshError);
  PlaneOutline open = polygon({{0.0, 0.0}, {2.1, 0.0}, {2.0, 2.3}});
  open.curves.front().resize(5);
  CHECK_THROWS_AS(mesh_plane(session, open, SizeField(0.6, 0.2)), MeshError);
  PlaneOutline sound = polygon({{0.0, 0.0}, {2.1, 0.0}, {2.0, 2.3}});
  CHECK_NOTHROW(mesh_plane(session, sound, SizeField(0.6, 0.2)));
}

}  // namespace gapstrain::mesh
