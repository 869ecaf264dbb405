// Sizes of the tubes, plates and screws that stand for the papers' specimens: what a bench model is built from.
#pragma once

#include <string_view>
#include <vector>

namespace gapstrain::models {

// What holds the plate. Shaft: the proximal fragment of a bone whose distal one stands for condyles.
enum class BenchScrews {
  locking,                // through both cortices
  near_cortex,            // locking, in the near cortex only
  near_cortex_innermost,  // likewise, the two next to the fracture
  near_cortex_shaft,      // likewise, all of the shaft
  cortical,               // ball heads, tightened
  cortical_shaft          // likewise, all of the shaft; locking ones in the condyles
};

// mm, N, N mm, MPa.
struct BenchTube {
  double outer, wall, length, modulus;
};
struct BenchBar {
  int holes;
  double pitch, width, thickness, hole, core, modulus;  // hole: across; core: of its screws
};

// One bench test's tube, plate, screws and loads.
struct BenchSizes {
  std::string_view name, stands_for;
  BenchTube tube;
  BenchBar bar;
  double gap, standoff;
  double before_fracture;  // holes on the proximal fragment; half of one lies over the gap and stays empty
  double axial, moment;
  BenchScrews screws = BenchScrews::locking;
  std::vector<std::string_view> more_loads = {};  // besides axial, torsion and bending; see bench_loads.h
  double hard_moment = 0.0;                       // of bench_load::hard
  double line_aside = 0.0;                        // of a load line, away from the plate
  double preload = 0.0;                           // of ball heads
};

// Of all models, in the order in which they are listed to people.
const std::vector<BenchSizes>& bench_sizes();

// Whether a hole has bone under it. Nearer to an edge of the gap its screw's spot would not be all on bone.
bool has_bone_under(const BenchSizes& sizes, int hole);

}  // namespace gapstrain::models
