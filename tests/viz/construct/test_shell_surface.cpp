#include "viz/construct/shell_surface.h"

#include "tests/viz/sample_meshes.h"

#include <vtkCellArray.h>
#include <vtkIdList.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <catch2/catch.hpp>

#include <Eigen/Geometry>
#include <cmath>
#include <numbers>

using namespace gapstrain;

namespace {

const tests::StripOfHoles strip{.holes = 3,
                                .start = 4.1,
                                .pitch = 7.3,
                                .width = 6.1,
                                .radius = 1.4,
                                .height = 2.2,
                                .thickness = 1.7,
                                .around = 24,
                                .layers = 3};

double strip_area() {
  const double n = strip.around;
  const double hole = 0.5 * n * strip.radius * strip.radius * std::sin(2.0 * std::numbers::pi / n);
  return strip.holes * (strip.pitch * strip.width - hole);
}

// Flux of the position vector out of a surface over three: its share of the enclosed volume.
double enclosed_volume(vtkPolyData& surface) {
  double volume = 0.0;
  vtkNew<vtkIdList> cell;
  surface.GetPolys()->InitTraversal();
  while (surface.GetPolys()->GetNextCell(cell)) {
    const auto point = [&](vtkIdType k) { return Eigen::Vector3d(surface.GetPoint(cell->GetId(k))); };
    for (vtkIdType k = 1; k + 1 < cell->GetNumberOfIds(); ++k)
      volume += point(0).dot(point(k).cross(point(k + 1))) / 6.0;
  }
  return volume;
}

}  // namespace

TEST_CASE("both faces and the rim of a plate with holes enclose area times thickness", "[viz][shell_surface]") {
  const auto mesh = tests::strip_of_holes(strip);
  const auto surface = viz::shell_surface(mesh, viz::undeformed_faces(mesh));
  const double volume =
      enclosed_volume(*surface.top) + enclosed_volume(*surface.bottom) + enclosed_volume(*surface.rim);
  CHECK(volume == Approx(strip_area() * strip.thickness).epsilon(1e-6));  // points are stored in single precision
}

TEST_CASE("both faces and the rim of a tube enclose its wall", "[viz][shell_surface]") {
  const tests::EllipticTube tube{2.0, 31.0, 5.3, 5.3, 1.6, 64, 20};
  const auto mesh = tests::elliptic_tube(tube);
  const auto surface = viz::shell_surface(mesh, viz::undeformed_faces(mesh));
  const double volume =
      enclosed_volume(*surface.top) + enclosed_volume(*surface.bottom) + enclosed_volume(*surface.rim);
  const double n = tube.around, polygon = 0.5 * n * std::sin(2.0 * std::numbers::pi / n);
  const double outer = 5.3 + 0.8, inner = 5.3 - 0.8;
  CHECK(volume == Approx((outer * outer - inner * inner) * polygon * 29.0).epsilon(1e-5));
}

TEST_CASE("the boundary of a plate is its outline and its holes", "[viz][shell_surface]") {
  const auto mesh = tests::strip_of_holes(strip);
  const int per_side = strip.around / 4;
  const auto edges = viz::boundary_edges(mesh);
  CHECK(edges.size() == std::size_t(strip.holes * strip.around + 2 * strip.holes * per_side + 2 * per_side));
  double length = 0.0;
  for (const auto& [a, b] : edges) length += (mesh.nodes.row(a) - mesh.nodes.row(b)).norm();
  const double rim = 2.0 * strip.around * strip.radius * std::sin(std::numbers::pi / strip.around);
  CHECK(length == Approx(2.0 * (strip.holes * strip.pitch + strip.width) + strip.holes * rim));
}

TEST_CASE("a small rotation carries both faces of a shell along as one rigid piece", "[viz][shell_surface]") {
  const auto mesh = tests::strip_of_holes(strip);
  const Eigen::Vector3d rotation(3e-6, -7e-6, 4e-6), shift(0.2, -0.1, 0.05);
  const double factor = 20.0;
  Eigen::MatrixX3d displacements(mesh.nodes.rows(), 3);
  for (Eigen::Index i = 0; i < mesh.nodes.rows(); ++i)
    displacements.row(i) = shift + rotation.cross(Eigen::Vector3d(mesh.nodes.row(i)));
  const Eigen::MatrixX3d rotations = rotation.transpose().replicate(mesh.nodes.rows(), 1);
  const auto faces = viz::deformed_faces(mesh, displacements, rotations, factor);
  const auto at_rest = viz::undeformed_faces(mesh);
  double error = 0.0;
  for (const auto& [moved, still] :
       {std::pair(&faces.top, &at_rest.top), std::pair(&faces.bottom, &at_rest.bottom)})
    for (Eigen::Index i = 0; i < mesh.nodes.rows(); ++i) {
      const Eigen::Vector3d place = still->row(i), expected = place + factor * (shift + rotation.cross(place));
      error = std::max(error, (Eigen::Vector3d(moved->row(i)) - expected).norm());
    }
  CHECK(error < 1e-7);  // second order in the shown rotation of 1.7e-4
}

TEST_CASE("each face shows its own values and the rim leads from one to the other", "[viz][shell_surface]") {
  const auto mesh = tests::strip_of_holes(strip);
  auto surface = viz::shell_surface(mesh, viz::undeformed_faces(mesh));
  const Eigen::VectorXd top = mesh.nodes.col(0), bottom = -2.0 * mesh.nodes.col(1);
  viz::set_scalars(surface, mesh, top, bottom);
  const auto value = [](vtkPolyData& data, vtkIdType i) {
    return data.GetPointData()->GetScalars()->GetTuple1(i);
  };
  for (vtkIdType i = 0; i < mesh.nodes.rows(); i += 7) {
    CHECK(value(*surface.top, i) == top(i));
    CHECK(value(*surface.bottom, i) == bottom(i));
  }
  for (vtkIdType i = 0; i < surface.rim->GetNumberOfPoints(); ++i) {
    double place[3];
    surface.rim->GetPoint(i, place);
    const bool on_top = place[2] > strip.height;
    REQUIRE(value(*surface.rim, i) == Approx(on_top ? place[0] : -2.0 * place[1]).margin(1e-5));
  }
}
