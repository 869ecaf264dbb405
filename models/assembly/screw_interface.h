// How much softer than bonded a screw's thread and the bone next to it are.
//
// Bonded, a screw in one wall is as stiff as two things in a row: the root joint at the face where it is loaded
// (root_flexibility.h), and the ring of bone from the shaft's core to three times its radius, held outside (ours:
// beyond a shaft's diameter of bone its stress has fallen to a tenth, and the wall's own model has it from there
// on). An interface of stiffness s, between 0 and 1, makes all six stiffnesses of that row s times as large:
// radial, along the shaft, tilting and twisting. So what it adds is (1 / s - 1) times the flexibility of the row,
// between the shaft's piece in the wall and the wall's port.
#pragma once

#include "models/assembly/root_flexibility.h"
#include "models/parts/construct.h"

namespace gapstrain::models {

// Bone round a shaft, a ring of a wall that the shaft crosses; isotropic in the wall's plane.
struct BoneRing {
  double radius = 0.0, thickness = 0.0;  // of the shaft; of the wall along the shaft, mm
  double youngs_modulus = 0.0, poissons_ratio = 0.0;
  double shear_along = 0.0;  // shear modulus of the planes along the shaft, MPa
};

// Motion of the shaft, rigid and bonded, by forces at the ring's middle (6 x 6), global axes; `axis` along the
// shaft, unit. In slices that do not know of each other:
//   across    (k ln n - (n^2 - 1) / (k (n^2 + 1))) / (2 pi (k + 1) G t), k = (3 - nu) / (1 + nu), n = R / a: plane
//             stress by N. I. Muskhelishvili's potentials (Some Basic Problems of the Mathematical Theory of
//             Elasticity, 1953, for a disk in a ring held outside; worked out here)
//   along     ln n / (2 pi G_along t)
//   twist     (1 / a^2 - 1 / R^2) / (4 pi G t)
//   tilt      the slices across, which resist with t^2 / 12, and along with a^2 / 2, side by side
solver::Matrix6 ring_flexibility(const BoneRing& ring, const Eigen::Vector3d& axis);

inline constexpr double ring_over_shaft = 3.0;  // n

// Of a shaft bonded in a wall and loaded at `face`, about `middle`: ring and root in a row. `root`: at the face.
solver::Matrix6 bonded_flexibility(const solver::Matrix6& ring, const Eigen::Vector3d& middle,
                                   const solver::Matrix6& root, const Eigen::Vector3d& face);

// The construct with another local stiffness of screws in bone; screws with one of their own keep it.
Construct with_interface(const Construct& construct, double stiffness);

// Of its screws at the soft bound: the softest that is to be reckoned with, or what it takes where that is softer.
double soft_bound_of(const Construct& construct);

// What an interface adds to it; zero for one that is bonded. @pre 0 < stiffness <= 1
solver::Matrix6 interface_give(double stiffness, const solver::Matrix6& bonded);

}  // namespace gapstrain::models
