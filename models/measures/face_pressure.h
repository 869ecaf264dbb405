// How surfaces that touch bear on each other: the fracture's faces, and the plate on the bone.
#pragma once

#include "models/assembly/insertion.h"
#include "models/findings/findings.h"

#include <optional>

namespace gapstrain::models {

FaceFindings measure_face(const Assembly& assembly, const ConstructState& state);

// The plate's underside on the bone.
struct UndersideFindings {
  Force pressure;
  std::optional<Length> clearance;  // least of any spot; nothing when the plate lies over no bone
  // Friction carried over what it can be at most, the worse fragment's; nothing when the plate touches neither, or
  // without friction.
  std::optional<double> friction_use;
};
UndersideFindings measure_underside(const Assembly& assembly, const ConstructState& state);

// Largest slip of the plate on a fragment (0 proximal, 1 distal) from one state to the next, of spots that touch
// in both.
Length underside_slip(const Assembly& assembly, const ConstructState& from, const ConstructState& to,
                      std::size_t fragment);

}  // namespace gapstrain::models
