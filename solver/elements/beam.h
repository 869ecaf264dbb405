// Straight Timoshenko segment by its flexibility: exact for end loads, free of locking.
#pragma once

#include <Eigen/Core>

namespace gapstrain::solver {

// A circular bar's section by what the flexibility needs; shear areas, not shear factors.
struct BeamSection {
  double axial = 0.0;    // EA, N
  double bending = 0.0;  // EI, N mm^2
  double torsion = 0.0;  // GJ, N mm^2
  double shear = 0.0;    // G times the shear area, N
};

// Solid circle; shear area by Cowper 1966, J Appl Mech 33:335: kappa = 6 (1 + nu) / (7 + 6 nu).
BeamSection solid_circle(double diameter, double youngs_modulus, double poissons_ratio);

using Matrix6 = Eigen::Matrix<double, 6, 6>;
using Matrix12 = Eigen::Matrix<double, 12, 12>;

// Motion of end 2 (u, theta) per force and moment on it, end 1 held; global axes, mm/N and so on. (6 x 6)
Matrix6 beam_flexibility(const BeamSection& section, const Eigen::Vector3d& end_1, const Eigen::Vector3d& end_2);

// Turns motions at one point of a rigid body into those at another: [I, -[r]x; 0, I], r = to - from.
Matrix6 rigid_transfer(const Eigen::Vector3d& from, const Eigen::Vector3d& to);

// Stiffness of the same segment: [-T, I]^T F^-1 [-T, I] with T = rigid_transfer(end_1, end_2). (12 x 12)
// @throw std::invalid_argument when the ends coincide.
Matrix12 beam_stiffness(const BeamSection& section, const Eigen::Vector3d& end_1, const Eigen::Vector3d& end_2);

}  // namespace gapstrain::solver
