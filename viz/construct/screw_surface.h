// Screws as they show in pictures: a shaft along the axis, and the head that fills the hole.
#pragma once

#include "models/findings/fields.h"

#include <vtkPolyData.h>
#include <vtkSmartPointer.h>

namespace gapstrain::viz {

// Place of a point of the axis, its displacement magnified by `factor`.
inline Eigen::Vector3d deformed_point(const models::ScrewField& screw, std::size_t point, double factor) {
  return screw.axis[point] + factor * screw.displacements[point];
}

// Tube of the core's radius with the stress as active scalars.
vtkSmartPointer<vtkPolyData> shaft_surface(const models::ScrewField& screw, double factor);

// Cylinder of `height` from the axis' first point towards the tip.
vtkSmartPointer<vtkPolyData> head_surface(const models::ScrewField& screw, double height, double factor);

// A wire or the bar of a clamp.
vtkSmartPointer<vtkPolyData> rod_surface(const models::HoldField& hold, double radius);

}  // namespace gapstrain::viz
