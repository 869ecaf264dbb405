// A screw, or a wire, together with where it goes.
#pragma once

#include "models/geometry/plate_shape.h"
#include "models/parts/screw.h"

#include <string>

namespace gapstrain::models {

struct PlannedScrew {
  Screw screw;
  ScrewPlacement placement;
  // Names of its patches on the bone's mesh, unique among planned screws; empty where it holds nothing: a lag
  // screw glides through the near cortex, unless its head sits there.
  std::string near_spot, far_spot;

  // Of the near patch: the shaft's, or the gliding hole under a head that sits on the bone.
  double near_radius() const {
    return 0.5 * (screw.entry ? screw.size.thread_diameter : screw.size.core_diameter).value();
  }
};

}  // namespace gapstrain::models
