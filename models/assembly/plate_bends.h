// Where a plate lies that has bent for good.
//
// A plate's body answers elastically; what has bent at its sections is in the links' initial deformations
// (yield_sections.h). What lies beyond a section has moved as a rigid body on top of that.
#pragma once

#include "models/geometry/plate_shape.h"
#include "solver/bodies/yielding.h"

#include <Eigen/Core>

#include <cstddef>

namespace gapstrain::models {

struct Assembly;

// Axes of a section at `along` (columns): along the plate, across it, and the third one.
Eigen::Matrix3d section_axes(const PlateShape& shape, double along);

// Turn and shift by which all sections of a plate have moved what is at `along` on it: translations and rotations
// of a point that now is at `place`, global axes.
Eigen::Matrix<double, 6, 1> bent_motion(const Assembly& assembly, std::size_t plate,
                                        const solver::Yielded& yielded, double along,
                                        const Eigen::Vector3d& place);

}  // namespace gapstrain::models
