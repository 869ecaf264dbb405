// What lies between the fracture's edges, as links between matching spots.
#pragma once

#include "models/assembly/meshes.h"
#include "models/parts/fracture.h"
#include "solver/bodies/port.h"

#include <vector>

namespace gapstrain::models {

// One spot of an edge: what a spring, or a touching pair, between the edges stands for.
struct GapSpot {
  solver::Port proximal, distal;
  std::size_t fracture = 0;  // whose edges: those of the fragment of that number and of the next one
  double area = 0.0;         // of the cut face, mm^2
  double around = 0.0;       // rad, in [0, 2 pi)
  bool outer = true;         // the half of the wall towards the bone's surface
};

// Spots round the edge of a fracture, two through the wall (Gauss points), the first ones on the plate's side. An
// even pressure on the face is one force by area on each: it is what the shell's own edge would carry.
// `shells`: the fragments the edges belong to.
std::vector<GapSpot> gap_spots(std::size_t fracture, const solver::Shell& proximal_shell,
                               const FractureEdge& proximal, const solver::Shell& distal_shell,
                               const FractureEdge& distal, double obliquity, int around = 24);

// Flexibility (3 x 3, global axes) of a confined column of tissue of this area between faces of normal `normal` at
// distance `gap_normal` (a tenth of a millimetre at least, faces in touch are rough): k_n = E (1 - nu) / ((1 +
// nu)(1 - 2 nu)) A / h, k_t = G A / h.
Eigen::Matrix3d tissue_flexibility(const Tissue& tissue, double area, double gap_normal,
                                   const Eigen::Vector3d& normal);

// Normal of the cut plane, towards distal, construct axes.
Eigen::Vector3d cut_normal(const Fracture& fracture);

}  // namespace gapstrain::models
