// The plated tube of tests/models/constructs.h against three-dimensional solids.
//
// Reference: linear elastic solids, curved ten-node tetrahedra, four meshes of 0.14 to 1.5 million unknowns with
// extrapolation, computed for this project independently of its code and confirmed with a general-purpose finite
// element library (compliance equal to 2e-9). Screws bonded, filled holes solid. Mesh error: stiffness and motion
// 0.04 % (torsion 0.2 %), surface stress 0.3 %, hole peak 1 %, screw forces 0.4 % of the largest of their kind.
#pragma once

#include "tests/solid/comparison.h"

namespace gapstrain::tests {

std::vector<Comparison> compare_plated_tube();

}  // namespace gapstrain::tests
