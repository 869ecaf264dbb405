// A bone plate: a flat bar with holes, bent to follow the bone at a standoff.
#pragma once

#include "models/parts/bone.h"
#include "models/parts/material.h"
#include "models/parts/units.h"

#include <optional>
#include <vector>

namespace gapstrain::models {

enum class HoleShape {
  round,  // threaded, takes a locking head
  slot    // lengthened along the plate, takes a ball head and eccentric drilling
};

struct PlateHole {
  Length position;  // of the centre, along the plate from its proximal end
  HoleShape shape = HoleShape::round;
  Length diameter;     // of the hole; across the plate for a slot
  Length slot_length;  // overall length along the plate; equal to the diameter for a round hole
  bool operator==(const PlateHole&) const = default;
};

// Width and thickness at a place along the plate; linear between, constant beyond the outer ones.
struct PlateSection {
  Length position;
  Length width;
  Length thickness;
  bool operator==(const PlateSection&) const = default;
};

enum class Contour {
  follows_bone,  // bent on the flat so that the underside keeps the standoff along its centre line
  straight       // not bent: the standoff is the smallest distance to the bone
};

struct Plate {
  Length length;
  std::vector<PlateSection> sections;  // at least one
  std::vector<PlateHole> holes;        // by rising position; hole 1 is the most proximal
  Metal material;
  Aspect aspect = Aspect::cranial;
  Length proximal_end;  // its place along the bone
  Length standoff;      // underside to bone surface
  Contour contour = Contour::follows_bone;
  // Bent once more over the fracture before it is put on: height of the underside over its bed there, falling
  // straight to nothing at both ends of the plate.
  Length prebend;
  Angle angle_limit = 12.0 * degree;  // of its system's locking screws against square (common practice, no source)
  double finish_factor = 1.0;         // what its surface leaves of the fatigue strength of smooth bars
  bool operator==(const Plate&) const = default;
};

// None for a number that the plate does not have; 1 is the most proximal.
inline const PlateHole* find_hole(const Plate& plate, int number) {
  if (number < 1 || static_cast<std::size_t>(number) > plate.holes.size()) return nullptr;
  return &plate.holes[static_cast<std::size_t>(number) - 1];
}

}  // namespace gapstrain::models
