#include "viz/construct/shell_surface.h"

#include <vtkCellArray.h>
#include <vtkDoubleArray.h>
#include <vtkFloatArray.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkPoints.h>

#include <Eigen/Geometry>
#include <algorithm>
#include <utility>

namespace gapstrain::viz {

namespace {

vtkSmartPointer<vtkPoints> points_of(const Eigen::MatrixX3d& places) {
  auto points = vtkSmartPointer<vtkPoints>::New();
  points->SetNumberOfPoints(places.rows());
  for (Eigen::Index i = 0; i < places.rows(); ++i) points->SetPoint(i, places(i, 0), places(i, 1), places(i, 2));
  return points;
}

vtkSmartPointer<vtkFloatArray> normals_of(const Eigen::MatrixX3d& directions) {
  auto normals = vtkSmartPointer<vtkFloatArray>::New();
  normals->SetNumberOfComponents(3);
  normals->SetNumberOfTuples(directions.rows());
  for (Eigen::Index i = 0; i < directions.rows(); ++i)
    normals->SetTuple3(i, directions(i, 0), directions(i, 1), directions(i, 2));
  return normals;
}

template <typename Cell>
void insert_cell(vtkCellArray& cells, const Cell& cell, bool reversed) {
  cells.InsertNextCell(static_cast<vtkIdType>(cell.size()));
  for (std::size_t k = 0; k < cell.size(); ++k) cells.InsertCellPoint(cell[reversed ? cell.size() - 1 - k : k]);
}

vtkSmartPointer<vtkPolyData> face(const mesh::ShellMesh& mesh, const Eigen::MatrixX3d& places,
                                  const Eigen::MatrixX3d& normals, bool reversed) {
  vtkNew<vtkCellArray> cells;
  for (const auto& quad : mesh.quads) insert_cell(*cells, quad, reversed);
  for (const auto& triangle : mesh.triangles) insert_cell(*cells, triangle, reversed);
  auto surface = vtkSmartPointer<vtkPolyData>::New();
  surface->SetPoints(points_of(places));
  surface->SetPolys(cells);
  surface->GetPointData()->SetNormals(normals_of(normals));
  return surface;
}

// Four points of its own for every boundary edge, in boundary_edges' order: top first, top second, bottom second,
// bottom first. Own points keep the edge between rim and face sharp under light.
vtkSmartPointer<vtkPolyData> rim(const mesh::ShellMesh& mesh, const FacePoints& faces) {
  const auto edges = boundary_edges(mesh);
  Eigen::MatrixX3d edge_normals = Eigen::MatrixX3d::Zero(mesh.nodes.rows(), 3);
  for (const auto& [a, b] : edges) {
    const Eigen::Vector3d along = faces.top.row(b) - faces.top.row(a);
    const Eigen::Vector3d outward = along.cross(Eigen::Vector3d(faces.directors.row(a))).normalized();
    edge_normals.row(a) += outward.transpose();
    edge_normals.row(b) += outward.transpose();
  }
  const auto count = static_cast<Eigen::Index>(edges.size());
  Eigen::MatrixX3d places(4 * count, 3), normals(4 * count, 3);
  vtkNew<vtkCellArray> cells;
  for (Eigen::Index e = 0; e < count; ++e) {
    const auto [a, b] = edges[static_cast<std::size_t>(e)];
    places.middleRows<4>(4 * e) << faces.top.row(a), faces.top.row(b), faces.bottom.row(b), faces.bottom.row(a);
    const Eigen::RowVector3d at_a = edge_normals.row(a).normalized(), at_b = edge_normals.row(b).normalized();
    normals.middleRows<4>(4 * e) << at_a, at_b, at_b, at_a;
    insert_cell(*cells, std::array<vtkIdType, 4>{4 * e, 4 * e + 3, 4 * e + 2, 4 * e + 1}, false);
  }
  auto surface = vtkSmartPointer<vtkPolyData>::New();
  surface->SetPoints(points_of(places));
  surface->SetPolys(cells);
  surface->GetPointData()->SetNormals(normals_of(normals));
  return surface;
}

void set_active_scalars(vtkPolyData& data, const std::vector<double>& values) {
  vtkNew<vtkDoubleArray> array;
  array->SetName("value");
  array->SetNumberOfValues(static_cast<vtkIdType>(values.size()));
  std::copy(values.begin(), values.end(), array->GetPointer(0));
  data.GetPointData()->SetScalars(array);
}

}  // namespace

std::vector<Edge> boundary_edges(const mesh::ShellMesh& mesh) {
  // Every inner edge is walked once each way, so an edge without its opposite lies on the boundary.
  std::vector<std::pair<Edge, Edge>> walked;  // sorted ends, ends as walked
  const auto walk = [&](const auto& cell) {
    for (std::size_t k = 0; k < cell.size(); ++k) {
      const int a = cell[k], b = cell[(k + 1) % cell.size()];
      walked.push_back({{std::min(a, b), std::max(a, b)}, {a, b}});
    }
  };
  for (const auto& quad : mesh.quads) walk(quad);
  for (const auto& triangle : mesh.triangles) walk(triangle);
  std::sort(walked.begin(), walked.end());
  std::vector<Edge> edges;
  for (std::size_t i = 0; i < walked.size();) {
    std::size_t next = i + 1;
    while (next < walked.size() && walked[next].first == walked[i].first) ++next;
    if (next == i + 1) edges.push_back(walked[i].second);
    i = next;
  }
  return edges;
}

FacePoints deformed_faces(const mesh::ShellMesh& mesh, const Eigen::MatrixX3d& displacements,
                          const Eigen::MatrixX3d& rotations, double factor) {
  FacePoints faces;
  faces.directors.resize(mesh.nodes.rows(), 3);
  for (Eigen::Index i = 0; i < mesh.nodes.rows(); ++i) {
    const Eigen::Vector3d director = mesh.directors.row(i);
    const Eigen::Vector3d rotation =
        rotations.rows() > 0 ? Eigen::Vector3d(rotations.row(i)) : Eigen::Vector3d::Zero();
    faces.directors.row(i) = (director + factor * rotation.cross(director)).normalized();
  }
  const Eigen::MatrixX3d middle = mesh.nodes + factor * displacements;
  const Eigen::MatrixX3d half = (0.5 * mesh.thickness).asDiagonal() * faces.directors;
  faces.top = middle + half;
  faces.bottom = middle - half;
  return faces;
}

FacePoints undeformed_faces(const mesh::ShellMesh& mesh) {
  const Eigen::MatrixX3d zero = Eigen::MatrixX3d::Zero(mesh.nodes.rows(), 3);
  return deformed_faces(mesh, zero, zero, 0.0);
}

ShellSurface shell_surface(const mesh::ShellMesh& mesh, const FacePoints& faces) {
  return {face(mesh, faces.top, faces.directors, false), face(mesh, faces.bottom, -faces.directors, true),
          rim(mesh, faces)};
}

void set_scalars(ShellSurface& surface, const mesh::ShellMesh& mesh, const Eigen::VectorXd& top,
                 const Eigen::VectorXd& bottom) {
  set_active_scalars(*surface.top, {top.begin(), top.end()});
  set_active_scalars(*surface.bottom, {bottom.begin(), bottom.end()});
  std::vector<double> rim_values;
  for (const auto& [a, b] : boundary_edges(mesh))
    rim_values.insert(rim_values.end(), {top(a), top(b), bottom(b), bottom(a)});
  set_active_scalars(*surface.rim, rim_values);
}

vtkSmartPointer<vtkPolyData> lines(const std::vector<Edge>& edges, const Eigen::MatrixX3d& places) {
  vtkNew<vtkCellArray> cells;
  for (const auto& edge : edges) insert_cell(*cells, edge, false);
  auto data = vtkSmartPointer<vtkPolyData>::New();
  data->SetPoints(points_of(places));
  data->SetLines(cells);
  return data;
}

}  // namespace gapstrain::viz
