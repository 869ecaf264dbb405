// What lies between the fracture's edges, as links between matching spots.
#pragma once

#include "models/assembly/contact_spots.h"
#include "models/assembly/meshes.h"
#include "models/parts/fracture.h"
#include "solver/bodies/link.h"
#include "solver/bodies/port.h"

#include <array>
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

// Ends of a link along `directions` (3 x k, global axes) between both faces at spot number `spot`: how far the
// distal face goes from the proximal one, both carried to the middle between them as the faces turn there. What a
// link passes on is so in equilibrium, and a turn of everything strains nothing, however wide the gap is. A face's
// turn is that of the rigid motion nearest to what its spots beside this one and this one do: a shear force's
// couple over the gap is a pull on the spots of one side and a push on those of the other, as the shear along the
// bone that goes with shear across it has it in a solid. `places`: of each spot, proximal and distal. @pre three
// spots round an edge
std::vector<solver::LinkEnd> gap_ends(const std::vector<GapSpot>& spots,
                                      const std::vector<std::array<SpotPlace, 2>>& places, std::size_t spot,
                                      const Eigen::MatrixXd& directions);

// Flexibility (3 x 3, global axes) of a confined column of tissue of this area between faces of normal `normal` at
// distance `gap_normal` (a tenth of a millimetre at least, faces in touch are rough): k_n = E (1 - nu) / ((1 +
// nu)(1 - 2 nu)) A / h, k_t = G A / h.
Eigen::Matrix3d tissue_flexibility(const Tissue& tissue, double area, double gap_normal,
                                   const Eigen::Vector3d& normal);

// Normal of the cut plane, towards distal, construct axes.
Eigen::Vector3d cut_normal(const Fracture& fracture);

}  // namespace gapstrain::models
