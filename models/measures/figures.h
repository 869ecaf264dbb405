// The construct in the trade's ratios.
#pragma once

#include "models/findings/findings.h"
#include "models/parts/construct.h"

#include <optional>
#include <vector>

namespace gapstrain::models {

// Innermost screw of each fragment; sides by the place of the hole against the fracture.
struct Innermost {
  std::size_t proximal = 0, distal = 0;
};

// Of those that are in after the last step, as positions in construct.screws. @pre both fragments have one then.
Innermost innermost_screws(const Construct& construct);

// The fracture's place along the plate, mm.
double fracture_along(const Construct& construct);

// Where the fracture is and how long, mm.
struct FractureExtent {
  double along = 0.0;   // its middle, on the plate
  double length = 0.0;  // along the bone: its gap, and what its obliquity reaches
};
FractureExtent fracture_extent(const Construct& construct);

// Of the construct after its last step.
ConstructFigures measure_figures(const Construct& construct);

// The same with other screws in it. `fracture`: the construct's
ConstructFigures measure_figures(const Construct& construct, const std::vector<const Screw*>& screws,
                                 const FractureExtent& fracture);

}  // namespace gapstrain::models
