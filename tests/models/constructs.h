// Constructs that tests are run on.
#pragma once

#include "models/parts/construct.h"

namespace gapstrain::tests {

// Isotropic tube 14/9 mm, 160 mm long, gap 3 mm in its middle; plate 112 x 8 x 2.5 mm, ten holes of 3 mm at
// +-(5.5 + 11 k), standoff 1.5 mm; locking screws of 2.4 mm core in holes k = 1, 2, 4 a side. Axial load between
// balls 4 mm beyond the ends, end moments, torsion of a held end.
models::Construct plated_tube();

// A sound construct of random sizes, materials, holes, screws (tilted ones and single cortices among them),
// fracture (oblique, filled or not) and loads. Equal seeds give equal constructs.
models::Construct random_construct(unsigned seed);

}  // namespace gapstrain::tests
