// How much larger a radiograph shows a bone than it is, from a marker of known size beside it.
#pragma once

#include "models/parts/units.h"

namespace gapstrain::models {

struct Magnification {
  double factor = 1.0;  // seen over true
  double spread = 0.0;  // of the factor, either way, as a share of it
};

// A ball or bar of known length at the bone's height, and the length at which the image shows it. The spread: both
// edges read to 0.2 mm each, and a marker up to 20 mm nearer to the tube than the bone, or further away, at a
// distance of 1 m (both a choice of this program, no source).
// @throw PatientError for lengths that no radiograph brings together: radiographs magnify, by 5 to 20 % for a limb
//        on the table (from memory); allowed is up to 50 %
Magnification magnification(Length marker_true, Length marker_seen);

Length true_length(Length seen, const Magnification& magnification);

}  // namespace gapstrain::models
