// Flat meshes of a tube's two parts, unrolled: cut once, refined at spots and at the cut, closed at the seam.
#pragma once

#include "mesh/gmsh_session.h"
#include "mesh/shell_mesh.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace gapstrain::mesh {

// A round patch on the tube with a ring of nodes exactly on its edge and a node at its centre.
struct Spot {
  std::string name;       // group names become "spot:NAME" and "ring:NAME"
  double s = 0.0;         // round the tube, mm
  double x = 0.0;         // along the tube, mm
  double radius_s = 0.0;  // half axes of the patch in the unrolled plane (a circle on the tube may be an
  double radius_x = 0.0;  // ellipse here when the plane is scaled), mm
};

struct UnrolledTube {
  double perimeter = 0.0;                            // s in [0, perimeter), periodic
  double length = 0.0;                               // x in [0, length]
  std::optional<std::function<double(double)>> cut;  // x of the cut at s; absent: one part
  std::vector<Spot> spots;
  std::vector<double> section_lines;  // x of closed mesh lines round the whole tube, clear of spots and cut
  double size_max = 1.6;              // edge lengths, mm
  double size_cut = 1.0;              // along the cut
  int ring_elements = 16;             // round each spot, even
  double growth = 0.22;               // mm of edge length per mm away from a spot or the cut
};

struct CutTube {
  FlatMesh proximal;  // towards x = 0
  FlatMesh distal;    // towards x = length; the whole tube is `proximal` when nothing is cut
};

// Nodes hold (s, x) with s in [0, perimeter); cells on the seam join nodes from both of its sides, so a cell's own
// nodes may differ by a perimeter in s. Cells are counter-clockwise in (s, x).
// Groups of each part, closed curves in order of rising s from its smallest: "end" (the tube's own end; with no
// cut "end:0" and "end:1"), "cut" (both parts' lists match entry by entry: same s), "section:K", "ring:NAME" and
// "spot:NAME" (all nodes of the patch, ring included).
// @throw MeshError when spots overlap, lie on the cut or beyond an end, or when Gmsh fails.
CutTube mesh_cut_tube(const GmshSession& session, const UnrolledTube& tube);

}  // namespace gapstrain::mesh
