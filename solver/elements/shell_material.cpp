#include "solver/elements/shell_material.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace gapstrain::solver {

ShellMaterial isotropic_shell(double youngs_modulus, double poissons_ratio) {
  const double shear = youngs_modulus / (2.0 * (1.0 + poissons_ratio));
  return orthotropic_shell(youngs_modulus, youngs_modulus, poissons_ratio, shear, shear, shear);
}

ShellMaterial orthotropic_shell(double modulus_1, double modulus_2, double poisson_12, double shear_12,
                                double shear_13, double shear_23) {
  const double poisson_21 = poisson_12 * modulus_2 / modulus_1;
  const double determinant = 1.0 - poisson_12 * poisson_21;
  ShellMaterial material;
  material.plane_stress << modulus_1 / determinant, poisson_21 * modulus_1 / determinant, 0.0,  //
      poisson_12 * modulus_2 / determinant, modulus_2 / determinant, 0.0,                       //
      0.0, 0.0, shear_12;
  material.shear_13 = shear_13;
  material.shear_23 = shear_23;
  const bool definite = modulus_1 > 0.0 && modulus_2 > 0.0 && shear_12 > 0.0 && shear_13 > 0.0 && shear_23 > 0.0 &&
                        determinant > 0.0;
  if (!definite) throw std::invalid_argument("elastic constants of a shell are not positive definite");
  material.poisson = std::sqrt(std::max(poisson_12 * poisson_21, 0.0));
  return material;
}

}  // namespace gapstrain::solver
