// The order in which a construct comes about: what is placed, inserted, tightened and taken out again, when.
#pragma once

#include "models/parts/material.h"
#include "models/parts/screw.h"
#include "models/parts/units.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

enum class HoldKind {
  wire,            // through a plate hole and both cortices: holds the plate sideways, not along the wire
  plate_clamp,     // presses the plate onto the bone from its top face and the far cortex
  fracture_clamp,  // presses the fragments together, square to the cut through its middle
};

// A hold that is meant to be taken out again.
struct TemporaryHold {
  std::string label;  // what steps call it by
  HoldKind kind = HoldKind::wire;
  int hole = 0;           // wire: 1-based number of the plate hole
  Length diameter;        // wire
  Length along;           // plate clamp: on the plate from its proximal end
  Force force;            // clamps: what they are closed with
  std::size_t plate = 0;  // that a wire or a plate clamp holds, among the construct's plates
  bool operator==(const TemporaryHold&) const = default;
};

// A wire goes through plate and bone like a screw: straight, through both cortices, its diameter for core and
// thread. It has no thread to speak of: the pitch is 0, so what asks for a pull-out strength must not be given
// one.
Screw wire_as_screw(const TemporaryHold& wire, const Metal& material);

// One step, in the order: tissue grows, holds are placed, screws inserted, screws tightened, holds and screws
// taken out. A link is free of stress at the moment it is put in, in the state the construct is then in.
struct Step {
  std::vector<std::string> place;    // labels of temporary holds
  std::vector<std::string> insert;   // labels of screws; a locking head holds from here on
  std::vector<std::string> tighten;  // labels of ball-headed screws that are in
  std::vector<std::string> remove;   // labels of whatever is in
  std::optional<Tissue> tissue;      // fills the gap from here on, in place of what filled it
};

}  // namespace gapstrain::models
