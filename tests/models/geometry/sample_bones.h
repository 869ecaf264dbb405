// Bones with unequal, non-round sizes for the tests of the parts.
#pragma once

#include "models/parts/bone.h"

namespace gapstrain::tests {

using namespace models;  // NOLINT: these samples are nothing but parts

inline BoneStation station(double position, double mediolateral, double craniocaudal, double cortex,
                           double bow_lateral = 0.0, double bow_cranial = 0.0) {
  return {position * mm, mediolateral * mm, craniocaudal * mm, cortex * mm, bow_lateral * mm, bow_cranial * mm};
}

inline Bone bone(double length, std::vector<BoneStation> stations) {
  Bone bone;
  bone.name = "radius";
  bone.length = length * mm;
  bone.stations = std::move(stations);
  bone.cortex = isotropic_cortex("test bone", 17300.0 * mpa, 0.31, "none: test data");
  return bone;
}

inline Bone round_bone(double length, double width, double cortex) {
  return bone(length, {station(0.4 * length, width, width, cortex)});
}

// Tapering, elliptic and bowed out of any plane.
inline Bone crooked_bone() {
  return bone(183.0, {station(21.0, 19.3, 14.1, 2.3), station(74.0, 15.2, 12.7, 2.9, 1.7, 2.6),
                      station(118.0, 14.1, 11.9, 2.6, 2.9, 3.1), station(169.0, 20.7, 13.3, 1.8, 0.6, -0.4)});
}

}  // namespace gapstrain::tests
