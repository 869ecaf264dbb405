// What a rule was judged by, as values: words are made of them last (models/words/rule_words.h). Numbers that a
// rule bounds stand in RuleFinding itself.
#pragma once

#include "models/parts/screw.h"
#include "models/parts/units.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace gapstrain::models {

// How a construct treats its fracture, as far as rules tell apart.
enum class Treatment {
  compression,     // compression screws, or else a fracture clamp while it is plated, press the fragments together
  neutralisation,  // lag screws press, the plate protects them
  bridging         // the plate spans the fracture; it may move a little
};

// Why a rule asks nothing of a construct.
enum class Inapplicable {
  no_locking_screw,
  comminuted,
  pressed,
  plate_does_not_press,
  oblique,
  no_fracture_length,
  lag_screws_hold,
  all_pass_both_cortices,
  no_plate_screw,
  fragment_without_screw,
  no_screw_in_bone,
  nothing_presses,
  screws_not_mixed
};

// A screw of the construct, or a clamp.
struct RulePart {
  ScrewId screw = ScrewId::none;
  std::string label;  // a screw's may be empty
  int hole = 0;       // 0: beside the plate, or a clamp
};
using RuleParts = std::vector<RulePart>;

struct TreatmentBasis {
  Treatment treatment = Treatment::bridging;
  bool simple = true;
  Length gap, slid;               // as entered; closed by compression screws
  RuleParts sliding{};            // compression screws
  RuleParts pressing{};           // they, lag screws and clamps
  std::optional<Length> reach{};  // of the gap that these could close, where it is wider
};

struct BridgedGapBasis {};

struct PrebendBasis {};

struct SpanBasis {
  bool simple = true, oblique = false;
  Length plate{}, fracture{}, bone{};  // lengths
  std::optional<Length> needed{};      // of a plate that keeps the rule
};

struct DensityBasis {
  int filled = 0, holes = 0;
  int holes_needed = 0;              // for as many screws
  std::optional<int> leave_empty{};  // nothing: too few screws would be left
};

struct StandoffBasis {
  bool straight = false;  // the plate, so that the distance is that of one place:
  int hole = 0;           // the nearest
};

struct CountBasis {
  std::size_t fragment = 0;
  bool bridged = true;
  int screws = 0, bicortical = 0;
};

struct UnicorticalBasis {
  RuleParts locking{}, others{};
};

struct EmptyHolesBasis {
  bool simple = true;
  Length working_length{};
  double bone_diameters = 0.0;                                            // of the working length
  int innermost_proximal = 0, innermost_distal = 0;                       // holes
  std::optional<int> nearest_usable_proximal{}, nearest_usable_distal{};  // clear of a comminuted zone, but empty
};

// Of one fragment's screws, in holes.
struct FragmentSpread {
  int from = 0, to = 0;
  std::optional<int> move_out_to{};  // too far from the plate's end
  std::vector<int> move_in_to{};     // too far from the fracture: either of these
};
struct SpreadBasis {
  FragmentSpread proximal{}, distal{};
};

// Of the screw that is nearest for its size.
struct EdgeBasis {
  bool of_fracture = true;  // else of the bone's end
  RulePart screw{};
  Length distance{}, needed{};
};

struct ThreadBasis {
  double never_above = 0.0;  // share of the bone's width
  RulePart screw{};          // the thickest for its place
  Length thread{}, width{};
  bool is_beyond = false;  // above what is never passed
};

struct TiltBasis {
  RulePart screw{};      // the most tilted
  RuleParts beyond{};    // the limit
  bool weakens = false;  // a head of a fixed angle, which the limit is not made for
};

struct BendBasis {
  RulePart screw{};      // of the hole that is bent most
  bool is_bent = false;  // enough to be spoken of
};

// A step, of those that press or pull, that comes after screws which are in its way.
struct TooEarly {
  RuleParts early;
  RulePart before;
  bool is_clamp = false;  // what is closed rather than tightened
};
struct OrderBasis {
  bool of_pressing = true;          // else of ball heads before locking ones
  bool has_steps = true;            // else the order is that of the screws' list
  std::vector<TooEarly> mishaps{};  // the first one first
};

using RuleBasis = std::variant<std::monostate, TreatmentBasis, BridgedGapBasis, PrebendBasis, SpanBasis,
                               DensityBasis, StandoffBasis, CountBasis, UnicorticalBasis, EmptyHolesBasis,
                               SpreadBasis, EdgeBasis, ThreadBasis, TiltBasis, BendBasis, OrderBasis>;

}  // namespace gapstrain::models
