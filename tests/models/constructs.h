// Constructs that tests are run on. Linear in their loads, as exact laws and linear references want them: without
// second-order effects unless a test asks for them.
#pragma once

#include "models/parts/construct.h"

#include <vector>

namespace gapstrain::tests {

// A plated tube that is its own mirror image about the gap's middle. mm, MPa, degrees.
struct TubeSizes {
  double outer = 14.0, inner = 9.0, length = 160.0, gap = 3.0;
  double plate_length = 112.0, plate_width = 8.0, plate_thickness = 2.5;
  int holes_a_side = 5;
  double first_hole = 5.5, pitch = 11.0;  // of the innermost hole from the middle, and on outward
  double hole = 3.0, standoff = 1.5, core = 2.4;
  int cortices = 2;
  double tilt = 0.0;  // of all tips towards the gap
  double bone_modulus = 17000.0, metal_modulus = 110000.0;
  std::vector<int> screws = {1, 2, 4};  // holes a side, 0 the innermost
};

// Loads: axial 100 N and bending 1000 N mm between balls 4 mm beyond the ends, torsion 1000 N mm of a held end.
models::Construct plated_tube(const TubeSizes& sizes = {});

// A sound construct of random sizes, materials, holes, screws (tilted ones and single cortices among them),
// fracture (oblique, filled or not) and loads. Equal seeds give equal constructs.
models::Construct random_construct(unsigned seed);

}  // namespace gapstrain::tests
