// Screws: thread data by size, and one screw as it sits in the construct.
#pragma once

#include "models/parts/material.h"
#include "models/parts/units.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::models {

// How the head meets what it sits on, and so which motions the joint passes on.
enum class ScrewKind {
  locking,      // threaded head: head and plate move and turn together; may be tilted within the system's limit
  cortical,     // ball head in the plate; tightening pulls the plate onto the bone
  compression,  // cortical, drilled eccentrically in a slot: tightening slides its fragment towards the fracture
  lag           // threaded in the far cortex only, across the fracture: tightening pulls the fragments together
};

struct ScrewSize {
  std::string designation;  // such as "HA 3.5" (ISO 5835) or "locking 3.5"
  Length thread_diameter;   // major
  Length core_diameter;     // minor: what carries load
  Length pitch;
  std::string source;
  std::optional<Length> pilot_drill = std::nullopt;  // for the thread; a gliding hole is the thread's diameter
  bool operator==(const ScrewSize&) const = default;
};

// Where a screw enters the bone without passing the plate.
struct FreeEntry {
  Length position;  // of the head along the bone
  Angle around;     // of the head round the bone from the plate's side towards +y
  bool operator==(const FreeEntry&) const = default;
};

// Which screw of a construct it is: findings, margins, the plan and pictures know it by this. Labels are for
// people.
enum class ScrewId : int { none = 0 };

struct Screw {
  std::string label;      // printed in tables and pictures, what steps call it by
  int hole = 0;           // 1-based number of the plate hole; 0: beside the plate, at `entry` (lag screws only)
  std::size_t plate = 0;  // whose hole it is, among the construct's plates
  std::optional<FreeEntry> entry;
  ScrewKind kind = ScrewKind::locking;
  ScrewSize size;
  Metal material;
  int cortices = 2;   // 1: ends inside the canal; 2: passes the far cortex
  Angle tilt_along;   // of the tip towards the distal end, in the plate's long plane
  Angle tilt_across;  // of the tip towards +y (construct axes), across the plate; beside the plate: square to the
                      // bone's axis and to the line from the head to that axis, rising angles
  // What tightening a ball head brings; locking screws have neither. See tightening.h for the default.
  std::optional<Force> preload;
  std::optional<Moment> insertion_torque;
  std::optional<Length> slide;  // compression: of the head along the slot; absent: by size, see tightening.h
  ScrewId id = ScrewId::none;   // its own within a construct, see number_screws
  bool operator==(const Screw&) const = default;
};

// Whether the head is a ball that is tightened, rather than one that locks as it goes in.
inline bool is_tightened(const Screw& screw) { return screw.kind != ScrewKind::locking; }

// Gives each screw without an id one that no other of them has: from 1, in their order.
void number_screws(std::vector<Screw>& screws);
// Whether each has an id of its own.
bool are_numbered(const std::vector<Screw>& screws);

// None for an id that no screw has, as ScrewId::none.
const Screw* find_screw(const std::vector<Screw>& screws, ScrewId id);

std::optional<ScrewSize> find_screw_size(std::string_view designation);
std::vector<std::string> screw_size_designations();

}  // namespace gapstrain::models
