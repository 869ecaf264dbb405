// A port: the few motions through which a patch of a body meets the rest of the world.
//
// A port is its spread R (6n x m): the nodal forces of m unit resultants. The port's motions are q = R^T u. Since
// R^T Z = I on the rigid motions Z of the patch, resultants are exact and a rigid motion of the body is read
// exactly. R only adds columns to the right-hand side, so an unused port leaves no trace in the body.
#pragma once

#include "solver/bodies/assemble.h"
#include "solver/bodies/not_elastic_error.h"

#include <Eigen/Core>

#include <vector>

namespace gapstrain::solver {

struct Port {
  SparseMatrix spread;     // (6n x m)
  Eigen::Vector3d centre;  // what its rotations turn about, mm
  Eigen::Index motions() const { return spread.cols(); }
};

// How a rim's interior is described besides its six rigid motions.
enum class RimModes {
  rigid,             // 6: u (3), theta (3) about the centre, global axes
  rigid_and_strain,  // 12: then eps_1, eps_2, gamma_12 and kappa_1, kappa_2, kappa_12 (see port.cpp) in `frame`
};

// The reactions of a rigid (and uniformly strained) ring, found on the patch of cells within `reach` of the centre
// (at least two cells deep) with the patch's border to the rest of the body clamped. `nodes`: the rim or the disk
// of the port. `frame`: columns are the patch's axes 1, 2 and its normal. @throw NotElasticError when the patch
// leaves no body around it.
Port reaction_port(const Shell& shell, const std::vector<int>& nodes, const Eigen::Vector3d& centre, double reach,
                   const Eigen::Matrix3d& frame, RimModes modes);

// A weighted mean of nodal translations at an offset along each node's director: 3 motions, global axes. Weights
// add up to one. It reads and loads single spots of an edge, where a rigid ring would stiffen it.
Port point_port(const Shell& shell, const std::vector<int>& nodes, const std::vector<double>& weights,
                double offset);
// An offset a node.
Port point_port(const Shell& shell, const std::vector<int>& nodes, const std::vector<double>& weights,
                const std::vector<double>& offsets);

}  // namespace gapstrain::solver
