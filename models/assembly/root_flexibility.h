// The local give of a screw's shaft where it enters a wall.
//
// A shaft bonded into an elastic wall is not held rigidly at the wall's face: it tilts, twists and shifts a little
// as if it went on freely for a fraction c of its radius a (tilt c a/EI, twist c a/GJ, shift c a/(kappa G A),
// stretch c a/EA). The fractions come from an axisymmetric three-dimensional unit cell, one shaft in one wall, for
// wall thickness t over a and for the stiffness of shaft over wall; nothing is fitted to whole constructs. They
// complete a wall model in which the shaft's port is rigid (solver/bodies/port.h).
#pragma once

#include "solver/elements/beam.h"

#include <Eigen/Core>

namespace gapstrain::models {

// Fractions of the shaft's radius, dimensionless.
struct RootFractions {
  double tilt = 0.0, twist = 0.0, shift = 0.0, stretch = 0.0;
};

// Port on the disk of the shaft's own radius. `wall_over_radius`: t/a; `stiffness_ratio`: shaft's over wall's
// Young's modulus. Interpolated (linear in t/a, in the ratio's logarithm) and held constant outside the tabulated
// range.
RootFractions wall_root(double wall_over_radius, double stiffness_ratio);

// Port on a rim of larger radius: adds what the ring of metal between shaft and rim gives.
// `rim_over_shaft`: rim radius / shaft radius, at least 1.
RootFractions rim_root(double wall_over_radius, double stiffness_ratio, double rim_over_shaft);

// The joint as a flexibility at its own place, global axes; `axis` along the shaft, unit. (6 x 6)
solver::Matrix6 root_flexibility(const RootFractions& fractions, const solver::BeamSection& section, double radius,
                                 const Eigen::Vector3d& axis);

}  // namespace gapstrain::models
