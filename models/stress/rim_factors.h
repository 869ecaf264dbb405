// What a shell's stress at the rim of an empty hole means in three dimensions.
//
// At the edge of a hole in a thick plate shell theory (plane stress; Reissner 1945 in bending) is not exact:
// surface stress is lower, and stretching peaks inside the thickness. Three-dimensional elasticity of a hole in an
// infinite plate against the shell (own Fourier solution, converged to 3e-4) shows that the part of the rim's
// stress that is the same all round is right, and the part that varies round the rim scales by a factor of radius
// over thickness.
#pragma once

#include <Eigen/Core>

namespace gapstrain::models {

// Three-dimensional over shell, of the part of the rim's stress that varies round the rim.
struct RimFactors {
  double bending_surface = 1.0;   // bending stress, at the surface
  double membrane_surface = 1.0;  // membrane stress, at the surface
  double membrane_inside = 1.0;   // membrane stress, its largest value inside the thickness
};

// Tabulated for radius / thickness 0.3 to 1.5 (constant outside) and Poisson's ratio 0.30 and 0.34 (linear
// between, constant outside; membrane_surface at 0.30 only).
RimFactors rim_factors(double radius_over_thickness, double poissons_ratio);

// Largest stress along a rim's tangent after the factors, at either surface or inside, over the largest one before
// them. `top`, `bottom`: shell stresses along the tangent at the rim's nodes, in order round the hole, evenly
// spaced, MPa.
double solid_over_shell(const Eigen::VectorXd& top, const Eigen::VectorXd& bottom, double radius_over_thickness,
                        double poissons_ratio);

}  // namespace gapstrain::models
