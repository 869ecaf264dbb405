// A construct whose gap is filled with tissue, at each spot of its own stage, under loads of any size.
#pragma once

#include "models/assembly/insertion.h"

#include <vector>

namespace gapstrain::models {

// Of the tissue at one spot of the gap, in the order of Assembly::face.
struct SpotStrain {
  bool closed = false;  // the faces touch there, at rest and under the load: all else is 0
  double axial = 0.0;  // motion along the bone over the gap that the steps left there, magnitude; a gap that shuts
                       // under the load is strained by about 1, one that gapes by what it opens
  double shear = 0.0;  // motion across the bone over it, seen by somebody who turns with the faces there
  double pressure = 0.0;  // hydrostatic, of the confined column, MPa; compression positive
};

// How far the tissue of each spot has come: 0 on the first day, HealingGap::stages - 1 at union.
using SpotStages = std::vector<std::size_t>;

// Tissue in a gap that the steps have left narrower than the fracture is wide is so much stiffer there. Assembly
// has columns as long as the fracture is wide, so such a spot takes a tissue of so many rungs higher on the
// ladder, to the nearest: its stiffness is right within the root of the ratio between two rungs.
struct HealingGap {
  const Assembly& assembly;  // its tissues are the ladder, with rungs to spare for narrow spots
  ConstructState made;       // as the steps left it
  std::size_t stages = 0;
  std::vector<std::size_t> rungs_up;  // of each spot
  std::vector<int> screws;  // that are in, of a metal with fatigue strength: positions in Assembly::screws

  const TissueFilling& filling(std::size_t spot, std::size_t stage) const;
};
HealingGap make_healing_gap(const Assembly& assembly, const StepState& made, std::size_t stages);

// Rungs to spare that a construct may need.
int rungs_beyond(const Construct& construct, std::size_t stages);

// The construct with tissue that has grown in it free of stress: it carries nothing until a load comes. @pre no
// tissue is in place yet
ConstructState fill_gap(const HealingGap& gap, const SpotStages& stages);

AssembledLoad scaled(const AssembledLoad& load, double factor);

// Under a load against the construct at rest. A gap of less than a tenth of a millimetre is taken as so wide:
// faces are rough (as models/assembly/gap_links.h has it for the tissue's stiffness).
std::vector<SpotStrain> measure_spots(const HealingGap& gap, const ConstructState& loaded,
                                      const SpotStages& stages);

}  // namespace gapstrain::models
