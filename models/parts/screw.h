// Screws: thread data by size, and one screw as it sits in the construct.
#pragma once

#include "models/parts/material.h"
#include "models/parts/units.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::models {

// How the head meets the plate, and so which motions the joint passes on.
enum class ScrewKind {
  locking  // threaded head: head and plate move and turn together; may be tilted within the system's limit
};

struct ScrewSize {
  std::string designation;  // such as "HA 3.5" (ISO 5835) or "locking 3.5"
  Length thread_diameter;   // major
  Length core_diameter;     // minor: what carries load
  Length pitch;
  std::string source;
};

struct Screw {
  std::string label;  // printed in tables and pictures
  int hole = 0;       // 1-based number of the plate hole
  ScrewKind kind = ScrewKind::locking;
  ScrewSize size;
  Metal material;
  int cortices = 2;   // 1: ends inside the canal; 2: passes the far cortex
  Angle tilt_along;   // of the tip towards the distal end, in the plate's long plane
  Angle tilt_across;  // of the tip towards +y (construct axes), across the plate
};

std::optional<ScrewSize> find_screw_size(std::string_view designation);
std::vector<std::string> screw_size_designations();

}  // namespace gapstrain::models
