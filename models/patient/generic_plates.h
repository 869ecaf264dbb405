// Plates that no maker makes, by the screw that goes with them: a stand-in until the one at hand is entered.
#pragma once

#include "models/parts/screw.h"

#include <span>
#include <string_view>

namespace gapstrain::models {

// In mm. Sizes round those of the demonstration cases, invented or from memory.
struct GenericPlate {
  double thread = 0.0;
  std::string_view locking, cortical;             // designations of its screws; empty: it takes none such
  double locking_core = 0.0, thread_pitch = 0.0;  // of a locking screw that parts/screw.h does not list
  double width = 0.0, thickness = 0.0;
  double strong_width = 0.0, strong_thickness = 0.0;  // of the stronger one with the same holes
  double pitch = 0.0;                                 // of its holes
  double hole = 0.0;                                  // round, for a locking screw
  double slot = 0.0, slot_length = 0.0;
  double standoff = 0.0;  // when its screws lock
};

std::span<const GenericPlate> generic_plates();  // by rising thread

ScrewSize screw_of(const GenericPlate& plate, bool cortical);

}  // namespace gapstrain::models
