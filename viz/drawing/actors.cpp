#include "viz/drawing/actors.h"

#include <vtkActor.h>
#include <vtkLookupTable.h>
#include <vtkNew.h>
#include <vtkPolyData.h>
#include <vtkPolyDataMapper.h>
#include <vtkProperty.h>

namespace gapstrain::viz {

vtkSmartPointer<vtkActor> plain_actor(vtkPolyData* data, const SurfaceStyle& style) {
  vtkNew<vtkPolyDataMapper> mapper;
  mapper->SetInputData(data);
  mapper->ScalarVisibilityOff();
  auto actor = vtkSmartPointer<vtkActor>::New();
  actor->SetMapper(mapper);
  vtkProperty* property = actor->GetProperty();
  property->SetColor(style.colour.red, style.colour.green, style.colour.blue);
  property->SetOpacity(style.colour.opacity);
  property->SetAmbient(1.0 - style.shade);
  property->SetDiffuse(style.shade);
  property->SetBackfaceCulling(style.cull == Cull::back);
  property->SetFrontfaceCulling(style.cull == Cull::front);
  return actor;
}

vtkSmartPointer<vtkActor> scalar_actor(vtkPolyData* data, double high) {
  constexpr int steps = 256;
  vtkNew<vtkLookupTable> table;
  table->SetNumberOfTableValues(steps);
  table->SetTableRange(0.0, high);
  for (int k = 0; k < steps; ++k) {
    const Colour colour = scale_colour(static_cast<double>(k) / (steps - 1));
    table->SetTableValue(k, colour.red, colour.green, colour.blue, 1.0);
  }
  // Little shade, so that a colour can be found again on the legend.
  auto actor = plain_actor(data, {.colour = ink::white, .cull = Cull::nothing, .shade = 0.3});
  vtkMapper* mapper = actor->GetMapper();
  mapper->ScalarVisibilityOn();
  mapper->SetScalarModeToUsePointData();
  mapper->SetLookupTable(table);
  mapper->UseLookupTableScalarRangeOn();
  mapper->InterpolateScalarsBeforeMappingOn();
  return actor;
}

vtkSmartPointer<vtkActor> line_actor(vtkPolyData* data, const LineStyle& style) {
  auto actor = plain_actor(data, {.colour = style.colour});
  actor->GetProperty()->LightingOff();
  actor->GetProperty()->SetLineWidth(static_cast<float>(style.width));
  return actor;
}

}  // namespace gapstrain::viz
