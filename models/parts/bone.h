// A long bone's shaft as a cortical tube, given by stations read off two radiographs.
#pragma once

#include "models/parts/material.h"
#include "models/parts/units.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

// The face of the bone that the plate lies on.
enum class Aspect { cranial, caudal, medial, lateral };

// One cross-section: an ellipse with a wall of constant thickness measured along its normal.
struct BoneStation {
  Length position;            // along the bone from its proximal end
  Length width_mediolateral;  // outer width, as the craniocaudal radiograph shows it
  Length width_craniocaudal;  // outer width, as the mediolateral radiograph shows it
  Length cortex;              // wall thickness
  Length bow_lateral;         // the axis' offset from the straight line between the ends, towards lateral
  Length bow_cranial;         // likewise, towards cranial
  bool operator==(const BoneStation&) const = default;
};

enum class Side { left, right };  // of the body

struct Bone {
  std::string name;                   // such as "radius"
  std::optional<Side> side;           // of the limb; absent: not said
  Length length;                      // proximal to distal end
  std::vector<BoneStation> stations;  // by rising position; monotone cubic between, constant beyond the outer ones
  CorticalBone cortex;
  bool operator==(const Bone&) const = default;
};

}  // namespace gapstrain::models
