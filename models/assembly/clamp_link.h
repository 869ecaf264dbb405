// A clamp as a link between two points that it presses towards each other.
#pragma once

#include "models/assembly/contact_spots.h"
#include "models/parts/step.h"

#include <array>
#include <stdexcept>

namespace gapstrain::models {

// Where a clamp's tips sit.
struct ClampTip {
  std::size_t body = 0;  // by its number, see body_numbers.h
  solver::Port port;
};

// A clamp that finds nothing to hold.
struct ClampError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

// Plate clamp: the plate's top face on the centre line, and the bone's far surface under it. Fracture clamp: where
// the line through the fracture's middle, square to the cut, leaves the bone on both sides. `shells`: of
// all bodies by their numbers. @throw ClampError
std::array<ClampTip, 2> clamp_tips(const TemporaryHold& clamp, const Construct& construct,
                                   const PlateShape& plate_shape, const BoneShape& bone_shape,
                                   const std::vector<solver::Shell>& shells);

// One row: the way between the tips; tension presses them together. A clamp springs open by 1 mm for 200 N (the
// order of a forceps' stiffness, no source).
solver::Link clamp_link(const std::string& name, const std::array<ClampTip, 2>& tips,
                        const std::array<SpotPlace, 2>& places);

}  // namespace gapstrain::models
