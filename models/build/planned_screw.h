// A screw together with where it goes.
#pragma once

#include "models/parts/plate_shape.h"
#include "models/parts/screw.h"

#include <string>

namespace gapstrain::models {

struct PlannedScrew {
  Screw screw;
  ScrewPlacement placement;

  // Names of its patches on the bone's mesh, unique among planned screws.
  std::string near_spot, far_spot;
};

}  // namespace gapstrain::models
