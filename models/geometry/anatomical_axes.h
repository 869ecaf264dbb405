// Directions of the body across the shaft, in the construct's axes: the table in bone_shape.h.
#pragma once

#include "models/parts/bone.h"

namespace gapstrain::models {

struct AcrossShaft {
  double y = 0.0, z = 0.0;
};

inline AcrossShaft in_construct(double lateral, double cranial, Aspect plate_aspect) {
  switch (plate_aspect) {
    case Aspect::cranial:
      return {-lateral, cranial};
    case Aspect::caudal:
      return {lateral, -cranial};
    case Aspect::lateral:
      return {cranial, lateral};
    case Aspect::medial:
      break;
  }
  return {-cranial, -lateral};
}

}  // namespace gapstrain::models
