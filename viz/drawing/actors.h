// Surfaces and lines as VTK shows them.
#pragma once

#include "viz/drawing/canvas.h"

#include <vtkSmartPointer.h>

class vtkActor;
class vtkPolyData;

namespace gapstrain::viz {

enum class Cull { nothing, back, front };

struct SurfaceStyle {
  Colour colour = ink::metal;
  Cull cull = Cull::nothing;
  double shade = 0.45;  // share of the colour that depends on the light; the rest is always there
};

vtkSmartPointer<vtkActor> plain_actor(vtkPolyData* data, const SurfaceStyle& style);
// Coloured by the active point scalars, 0 to `high` over the colour scale.
vtkSmartPointer<vtkActor> scalar_actor(vtkPolyData* data, double high);
vtkSmartPointer<vtkActor> line_actor(vtkPolyData* data, const LineStyle& style);

}  // namespace gapstrain::viz
