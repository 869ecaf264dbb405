// A shell as the solid it stands for: both faces and the narrow faces along its edges, for display.
#pragma once

#include "mesh/shell_mesh.h"

#include <vtkPolyData.h>
#include <vtkSmartPointer.h>
#include <Eigen/Core>

#include <array>
#include <vector>

namespace gapstrain::viz {

// Edges that belong to one cell only, each with its cell on the left as seen from the director's tip.
using Edge = std::array<int, 2>;
std::vector<Edge> boundary_edges(const mesh::ShellMesh& mesh);

// Both faces' points, thickness/2 along the (turned) director from the displaced mid-surface.
struct FacePoints {
  Eigen::MatrixX3d top, bottom;  // (n x 3) mm
  Eigen::MatrixX3d directors;    // (n x 3) turned with the rotations, unit
};

// `factor` magnifies displacements and rotations. Without rotations directors stay as they are.
FacePoints deformed_faces(const mesh::ShellMesh& mesh, const Eigen::MatrixX3d& displacements,
                          const Eigen::MatrixX3d& rotations, double factor);
FacePoints undeformed_faces(const mesh::ShellMesh& mesh);

struct ShellSurface {
  vtkSmartPointer<vtkPolyData> top, bottom, rim;  // normals outward; together they close
};

ShellSurface shell_surface(const mesh::ShellMesh& mesh, const FacePoints& faces);

// Active point scalars: `top` on the top face, `bottom` on the bottom face, from one to the other over the rim.
void set_scalars(ShellSurface& surface, const mesh::ShellMesh& mesh, const Eigen::VectorXd& top,
                 const Eigen::VectorXd& bottom);

// Edges between the nodes' places on a face.
vtkSmartPointer<vtkPolyData> lines(const std::vector<Edge>& edges, const Eigen::MatrixX3d& places);

}  // namespace gapstrain::viz
