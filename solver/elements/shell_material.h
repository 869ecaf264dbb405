// Plane-stress law of a shell with transverse shear, in its material axes 1, 2 (in the wall) and 3 (its normal).
#pragma once

#include <Eigen/Core>

namespace gapstrain::solver {

struct ShellMaterial {
  Eigen::Matrix3d plane_stress;  // (s11, s22, s12) from (e11, e22, 2 e12), MPa
  double shear_13 = 0.0;         // transverse shear moduli, MPa, without the factor 5/6
  double shear_23 = 0.0;
  double poisson = 0.0;  // sqrt(nu12 nu21), sets the triangle's higher-order stiffness

  double shear_12() const { return plane_stress(2, 2); }
};

// @throw std::invalid_argument when the constants are not positive definite.
ShellMaterial isotropic_shell(double youngs_modulus, double poissons_ratio);
ShellMaterial orthotropic_shell(double modulus_1, double modulus_2, double poisson_12, double shear_12,
                                double shear_13, double shear_23);

}  // namespace gapstrain::solver
