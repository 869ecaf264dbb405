// A bone whose axis is a circle's arc.
#pragma once

#include "models/parts/bone.h"

#include <cmath>

namespace gapstrain::tests {

// Bends the bone, of one section, towards cranial: `radius` of its axis in mm, highest at its middle.
inline void arc_bone(models::Bone& bone, double radius) {
  using models::mm;
  const models::BoneStation section = bone.stations.front();
  const double half = 0.5 * bone.length.value();
  bone.stations.clear();
  for (double x = -half; x <= half + 1e-9; x += 0.5) {
    models::BoneStation here = section;
    here.position = (x + half) * mm;
    here.bow_cranial = (std::sqrt(radius * radius - x * x) - std::sqrt(radius * radius - half * half)) * mm;
    bone.stations.push_back(here);
  }
}

}  // namespace gapstrain::tests
