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
  std::optional<Length> root_radius = std::nullopt;  // fillet at the thread's root; absent: see thread_root_radius
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
  std::optional<double> interface = std::nullopt;  // local stiffness in bone; absent: Construct::screw_interface
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

// `root_radius`, or 0.16 of the pitch: the least that the shallow threads of ISO 5835 have (from memory).
Length thread_root_radius(const ScrewSize& size);

// Local stiffness of a screw in a wall over that of one bonded to it (models/assembly/screw_interface.h says of
// what), by how thread and near bone hold. All published figures are of screws in blocks of bone, of one loading
// each; what they leave open is a band.
//
// bonded: as stiff as it can be, a bound. mean: models bonded all over were 19 % stiffer as a whole than those in
// which thread and bone only touch, in two human radii, loads along and across the screw (Stefanek, Pahr & Synek
// 2024, J Mech Behav Biomed Mater 157:106634, on simplified interfaces in uFE simulations; abstract, year, volume
// and page from memory): 1 / 1.19. soft: ours, a bound. Bone that drilling and cutting hurt comes on top: models
// without it overrated the force at failure in ten pieces of pigs' radii by more than 52 % in the mean (Stefanek
// et al. 2025, Front Bioeng Biotechnol 13:1524235, abstract); what it does to stiffness the abstracts do not say.
// 0.84 times 1 / 1.52 is 0.55; 0.5 is the next round figure below.
inline constexpr double bonded_interface = 1.0, mean_interface = 0.84, soft_interface = 0.5;
// The softest that is taken up at all.
inline constexpr double least_interface = 0.05;

// A screw's hold in bone that softens with the weeks, as a case states it. No published course was found that says
// what stiffness is left of a screw in bone after so many loads: one abstract (Firoozbakhsh, DeCoster & Moneim
// 1994, Proc. 16th Int. Conf. IEEE EMBS) has most of what stiffness is lost to forces across a screw lost in the
// first 2000 cycles, of screws in blocks, but not how much that is. So the default is none.
struct InterfaceStage {
  double week = 0.0;       // after the operation
  double stiffness = 1.0;  // local, over that of a bonded screw
  bool operator==(const InterfaceStage&) const = default;
};
// Straight between stages, from `first` on the day of the operation; after the last one it stays.
double interface_in_week(double first, const std::vector<InterfaceStage>& course, double week);

std::optional<ScrewSize> find_screw_size(std::string_view designation);
std::vector<std::string> screw_size_designations();

}  // namespace gapstrain::models
