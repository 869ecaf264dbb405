// What the hand must mind when a plan is carried out, as values: words are made of them last
// (models/words/plan_words.h).
#pragma once

#include "models/parts/bone.h"
#include "models/parts/units.h"
#include "models/rules/rule_basis.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace gapstrain::models {

// The bend over the fracture that comes on top of following the bone.
struct PlannedPrebend {
  Length height;  // of the underside over its bed at the fracture
  Length at;      // along the plate from its proximal end
  Angle bend;     // positive as PlateBend::bend: both halves fall straight from `height` to nothing at their ends
};

// No length is offered to order: the bone's section or the implants are estimates.
struct NoLengthToOrder {};

// The case gives none: screws stand as they are listed.
struct NoSteps {};

// More than a locking head is known to bear (largest_bend_at_locking_hole).
struct BendAtLockingHole {
  int hole = 0;  // 1-based
  Angle bend;    // magnitude
};

// Between the holes, once each.
struct BendBetweenHoles {};

struct FreeEntryNote {
  RulePart screw;
  Length position;  // from the bone's proximal end
  Angle around;     // the bone from the plate's side towards +y
  Aspect aspect;    // that the plate lies on
};

// Of a tilted screw, from square.
struct AimNote {
  RulePart screw;
  Angle along;   // of the tip, positive: towards distal
  Angle across;  // positive: towards +y
  Aspect aspect;
  bool side_known = false;  // of the limb
};

struct OffCentreNote {
  RulePart screw;
  Length off_centre;  // of the drill from its slot's middle, away from the fracture
};

struct GlidingHoleNote {
  RulePart screw;
  Length diameter;
};

struct OneCortexNote {
  RulePart screw;
};

// Locking screws' holes are drilled through a guide.
struct DrillGuideNote {};

// The thread's drill is not known: sizes were entered by hand.
struct UnknownDrills {
  RuleParts screws;
};

struct OtherMetals {
  struct One {
    RulePart screw;
    std::string metal;
  };
  std::vector<One> screws;
  std::string plate;  // its metal
};

// Of all lengths: how they are counted and rounded.
struct LengthsNote {
  Length allowance, step;
};

using PlanNote = std::variant<NoLengthToOrder, NoSteps, BendAtLockingHole, BendBetweenHoles, PlannedPrebend,
                              FreeEntryNote, AimNote, OffCentreNote, GlidingHoleNote, OneCortexNote,
                              DrillGuideNote, UnknownDrills, OtherMetals, LengthsNote>;

}  // namespace gapstrain::models
