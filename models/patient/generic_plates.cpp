#include "models/patient/generic_plates.h"

#include <string>

namespace gapstrain::models {

namespace {

// Locking threads of 1.5, 2.7, 4.0 and 5.0 mm stand in no catalogue of this program: cores as thick for their
// thread as the locking 3.5's, 0.8 (from memory, no standard), pitches of the cortex threads. The 4.0's plates lie
// between those on either side, with the holes as close as the 3.5's, whose plates take such screws too (from
// memory).
constexpr GenericPlate plates[] = {
    {1.5, "locking 1.5", "HA 1.5", 1.2, 0.5, 5.0, 1.3, 5.5, 1.7, 5.0, 1.7, 1.8, 3.2, 0.5},
    {2.0, "locking 2.0", "HA 2.0", 1.5, 0.6, 6.0, 1.6, 6.5, 2.1, 6.0, 2.2, 2.3, 4.0, 0.5},
    {2.4, "locking 2.4", "", 1.8, 0.6, 7.0, 2.0, 7.5, 2.6, 7.5, 2.6, 0.0, 0.0, 1.0},
    {2.7, "locking 2.7", "HA 2.7", 2.1, 1.0, 8.5, 2.6, 9.5, 3.3, 9.0, 2.9, 3.2, 5.4, 1.0},
    {3.5, "locking 3.5", "HA 3.5", 2.8, 1.25, 11.0, 3.4, 12.0, 4.2, 12.0, 3.7, 4.0, 6.5, 1.0},
    {4.0, "locking 4.0", "", 3.2, 1.5, 12.0, 3.8, 13.0, 4.8, 12.0, 4.2, 0.0, 0.0, 1.0},
    {4.5, "", "HA 4.5", 0.0, 0.0, 14.0, 4.6, 16.0, 6.0, 16.0, 0.0, 5.0, 8.0, 1.0},
    {5.0, "locking 5.0", "", 4.0, 1.75, 14.0, 4.6, 16.0, 6.0, 16.0, 5.3, 0.0, 0.0, 1.0},
};

}  // namespace

std::span<const GenericPlate> generic_plates() { return plates; }

ScrewSize screw_of(const GenericPlate& plate, bool cortical) {
  const std::string_view designation = cortical ? plate.cortical : plate.locking;
  if (const auto known = find_screw_size(designation)) return *known;
  return {std::string(designation), plate.thread * mm, plate.locking_core * mm, plate.thread_pitch * mm,
          "from memory, no standard: core 0.8 of the thread; pitch of the cortex thread"};
}

}  // namespace gapstrain::models
