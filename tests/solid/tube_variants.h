// Plated tubes of other sizes, screws and materials against three-dimensional solids.
//
// Reference: a second, independent set of solids, curved ten-node tetrahedra of a quarter of each tube, two meshes
// of 63 to 140 and 150 to 330 thousand unknowns, extrapolated; it gives the plated tube of plated_tube.h within
// 0.02 %. Its own error is about 0.1 % (axial, bending) and 0.3 % (torsion).
#pragma once

#include "tests/solid/comparison.h"

namespace gapstrain::tests {

std::vector<Comparison> compare_tube_variants();

}  // namespace gapstrain::tests
