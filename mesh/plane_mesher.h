// Quad-dominant meshes of plane faces whose boundary nodes are given. Private to mesh/.
#pragma once

#include "mesh/gmsh_session.h"
#include "mesh/shell_mesh.h"
#include "mesh/size_field.h"

#include <vector>

namespace gapstrain::mesh {

// One way along a curve.
struct CurveUse {
  int curve = 0;
  bool forward = true;
};

using Loop = std::vector<CurveUse>;

struct PlaneFace {
  std::vector<Loop> loops;       // the outer loop counter-clockwise, then one for each hole, clockwise
  std::vector<int> inner_nodes;  // points inside the face that become nodes
};

// Curves are lists of points, an even number of edges long; a closed curve ends with its first point. Curves meet
// in their end points only. Every point of a curve becomes a node, and nothing else on the curve does.
struct PlaneOutline {
  std::vector<Eigen::Vector2d> points;  // mm
  std::vector<std::vector<int>> curves;
  std::vector<PlaneFace> faces;

  int add_point(const Eigen::Vector2d& point);
};

// Node i < points.size() is point i of the outline. Cells counter-clockwise.
struct PlaneMesh {
  FlatMesh mesh;
  std::vector<int> face_of_quad;
};

// Meshes the faces with twice the wanted edge length on every other boundary point, joins triangles to quads and
// splits each cell into quads of the wanted length: all quads, for a quarter of the triangles, which is where the
// time goes. (The full-quad recombination of Remacle et al. 2012, Int. J. Numer. Meth. Engng 89, 1102-1119, works
// so too; done here the boundary is free to be curved.)
// @throw MeshError when Gmsh fails.
PlaneMesh mesh_plane(const GmshSession& session, const PlaneOutline& outline, const SizeField& size);

}  // namespace gapstrain::mesh
