// What to order and to do, from geometry: bends, screw lengths, drills, order.
#pragma once

#include "models/geometry/plate_shape.h"
#include "models/parts/construct.h"
#include "models/plan/plan_note.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

// The bend between two neighbouring holes (or an end and its first hole): by how much the underside turns there.
struct PlateBend {
  int from_hole = 0, to_hole = 0;  // 1-based; 0: the proximal end, holes + 1: the distal end
  Length at;                       // its middle, along the plate from the proximal end
  Angle bend;                      // positive: the ends towards the bone, hollow side down
};

struct OrderedScrew {
  ScrewId screw = ScrewId::none;
  std::string label;
  int hole = 0;  // 0: beside the plate
  ScrewKind kind = ScrewKind::locking;
  std::string size;  // designation, or the thread's diameter when it has none
  Length thread;     // diameter
  std::string metal;
  int cortices = 2;
  // As a depth gauge shows it (common practice, no source): along the screw from the plate's top face, or from the
  // bone's surface beside the plate, to the far cortex' outer surface; through one cortex to half the canal.
  Length measured;
  // To order. Two cortices: `length_to_order`. One: the longest stocked length that is not above `measured` but
  // passes the wall; when there is none, the next above. Nothing where `measured` rests on an estimate.
  std::optional<Length> length;
  std::optional<Length> drill;    // of the thread
  std::optional<Length> gliding;  // of the near cortex, lag screws
  Angle tilt_along, tilt_across;
  Length off_centre;  // compression: of the drill from its hole's middle, away from the fracture
  Length core;        // diameter
  // Where `measured` begins, in construct axes (see bone_shape.h), mm, and from there towards the tip, unit.
  Eigen::Vector3d seat = Eigen::Vector3d::Zero(), direction = -Eigen::Vector3d::UnitZ();
  int step = 0;  // the first that it goes in with, 1-based
};

// Measured depth and allowance, rounded up to the next multiple of the step: 26 mm measured, 2 mm more, in steps
// of 2 mm is 28 mm (common practice, no source).
Length length_to_order(Length measured, const Stock& stock);

struct Plan {
  std::string bone;                                   // "radius"
  std::optional<Side> side;                           // of the limb
  Length fracture_position;                           // of the gap's middle, from the bone's proximal end
  std::vector<Estimate> estimated;                    // what of the case was not measured
  Length plate_length, plate_width, plate_thickness;  // the last two at their largest
  int holes = 0;
  int slots = 0;  // of the holes
  std::string metal;
  Aspect aspect = Aspect::cranial;
  Length proximal_end;  // of the plate, along the bone from its proximal end
  Length standoff;
  std::vector<PlateBend> bends;  // from proximal to distal, all intervals; empty: the plate stays straight
  std::optional<PlannedPrebend> prebend;
  std::vector<OrderedScrew> screws;  // by hole, those beside the plate last
  std::vector<std::string> steps;    // in words, in order
  std::vector<PlanNote> notes;       // what the hand must mind, the weightiest first
};

// @pre check(construct) reports no error.
Plan make_plan(const Construct& construct);

}  // namespace gapstrain::models
