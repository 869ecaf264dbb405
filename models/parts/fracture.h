// The fracture: a plane cut through the shaft, opened to a gap that may be filled with tissue.
#pragma once

#include "models/parts/material.h"
#include "models/parts/units.h"

#include <optional>

namespace gapstrain::models {

enum class FracturePattern {
  simple,     // two fragments whose edges fit
  comminuted  // a zone of pieces that bears nothing
};

struct Fracture {
  Length position;  // of the gap's middle on the bone's axis, from the proximal end
  Length gap;       // along the axis, edge to edge; 0: reduced; for a comminuted zone its whole length
  Angle obliquity;  // of the cut plane against the cross-section; 0 is transverse
  Angle direction;  // round the bone from the plate's side towards +y: where the cut reaches furthest distally
  std::optional<Tissue> tissue;  // absent: the gap is empty
  FracturePattern pattern = FracturePattern::simple;
  bool operator==(const Fracture&) const = default;
};

}  // namespace gapstrain::models
