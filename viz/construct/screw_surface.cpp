#include "viz/construct/screw_surface.h"

#include <vtkCellArray.h>
#include <vtkDoubleArray.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkPoints.h>
#include <vtkTubeFilter.h>

#include <cassert>
#include <vector>

namespace gapstrain::viz {

namespace {

constexpr int tube_sides = 40;

// Two points in one place have no direction, and the tube would fail: `places` must be distinct neighbours.
vtkSmartPointer<vtkPolyData> tube(const std::vector<Eigen::Vector3d>& places, const std::vector<double>& values,
                                  double radius) {
  vtkNew<vtkPoints> points;
  points->SetDataTypeToDouble();
  vtkNew<vtkCellArray> lines;
  vtkNew<vtkDoubleArray> scalars;
  lines->InsertNextCell(static_cast<vtkIdType>(places.size()));
  for (std::size_t i = 0; i < places.size(); ++i) {
    lines->InsertCellPoint(points->InsertNextPoint(places[i].data()));
    scalars->InsertNextValue(values[i]);
  }
  vtkNew<vtkPolyData> axis;
  axis->SetPoints(points);
  axis->SetLines(lines);
  axis->GetPointData()->SetScalars(scalars);
  vtkNew<vtkTubeFilter> filter;
  filter->SetInputData(axis);
  filter->SetRadius(radius);
  filter->SetNumberOfSides(tube_sides);
  filter->CappingOn();
  filter->Update();
  return filter->GetOutput();
}

}  // namespace

vtkSmartPointer<vtkPolyData> shaft_surface(const models::ScrewField& screw, double factor) {
  std::vector<Eigen::Vector3d> places;
  std::vector<double> values;
  for (std::size_t i = 0; i < screw.axis.size(); ++i) {
    const Eigen::Vector3d place = deformed_point(screw, i, factor);
    if (!places.empty() && (place - places.back()).norm() < 1e-3 * screw.core_radius) continue;
    places.push_back(place);
    values.push_back(screw.stress[i]);
  }
  assert(places.size() > 1);
  return tube(places, values, screw.core_radius);
}

vtkSmartPointer<vtkPolyData> head_surface(const models::ScrewField& screw, double height, double factor) {
  assert(screw.axis.size() > 1);
  const Eigen::Vector3d top = deformed_point(screw, 0, factor);
  const Eigen::Vector3d direction = (deformed_point(screw, screw.axis.size() - 1, factor) - top).normalized();
  // A little smaller than the hole, or head and rim would share one surface; standing out, so that it catches the
  // eye.
  return tube({top - 0.06 * height * direction, top + 0.94 * height * direction}, {0.0, 0.0},
              0.95 * screw.head_radius);
}

vtkSmartPointer<vtkPolyData> rod_surface(const models::HoldField& hold, double radius) {
  return tube({hold.from, hold.to}, {0.0, 0.0}, radius);
}

}  // namespace gapstrain::viz
