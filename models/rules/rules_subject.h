// What the rules of the trade look at in a construct, worked out once: where its screws sit, in which fragment,
// how far the fracture reaches and what is left of its gap. Plain numbers in mm, as in models/parts/bone_shape.h.
#pragma once

#include "models/geometry/fracture_cut.h"
#include "models/geometry/plate_shape.h"
#include "models/rules/bounds.h"
#include "models/rules/rules.h"

#include <limits>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

// What does not depend on the choice of screws. @pre check(construct) reports no error
struct RuleSite {
  explicit RuleSite(const Construct& construct);

  BoneShape bone;
  PlateShape plate;
  CutThroughBone cut;

  // Where the plate's underside is furthest from the bone, on its centre line; before any prebend.
  struct Standoff {
    double distance = 0.0, along = 0.0;
  };
  Standoff highest;
  std::vector<std::optional<BoneCrossing>> square_to_hole;  // of a screw square to the plate in each hole
};

struct SeatedScrew {
  const Screw* screw = nullptr;
  RulePart part;
  ScrewPlacement placement;
  std::size_t fragment = 0;  // of its near cortex, 0 is the most proximal
  bool stays = true;         // is in after the last step
  // Of the middle of the wall nearest to it, of those that its thread holds in; infinite where it misses the bone.
  double to_edge = std::numeric_limits<double>::infinity();  // the fracture's
  double to_end = std::numeric_limits<double>::infinity();   // the bone's
  // Of the bone, square to the screw and to the bone's axis, where its near wall is: the width that its hole
  // weakens.
  double bone_width = 0.0;

  bool is_plate_screw() const { return screw->kind != ScrewKind::lag; }  // holds one fragment to the plate
};

// @pre the screw outlives it
SeatedScrew seat(const Screw& screw, const Construct& construct, const RuleSite& site);

// @pre check(construct) reports no error; the construct outlives it.
struct RuleSubject {
  static RuleSubject of(const Construct& construct);
  // `seated`: the construct's screws, in its order, seated on its site.
  RuleSubject(const Construct& of, std::shared_ptr<const RuleSite> on, std::vector<SeatedScrew> seated);

  const Construct& construct;
  std::shared_ptr<const RuleSite> site;
  const BoneShape& bone;
  const PlateShape& plate;
  const CutThroughBone& cut;
  std::vector<SeatedScrew> screws;  // in the construct's order, those taken out again among them
  double slid = 0.0;  // by how much compression screws close the gap: the longest slide of each fragment's
  Treatment treatment = Treatment::bridging;

  double gap_left() const;
  bool is_simple() const { return only(construct.fractures).pattern == FracturePattern::simple; }
  // What presses the fragments together: compression and lag screws and fracture clamps.
  RuleParts pressing() const;

  // Plate screws that stay, of one fragment.
  std::vector<const SeatedScrew*> fragment(std::size_t number) const;
  // The one nearest to the fracture and the one furthest away. @pre `fragment(distal)` is not empty
  const SeatedScrew& innermost(bool distal) const;
  const SeatedScrew& outermost(bool distal) const;
  bool has_screws_on_both_sides() const { return !fragment(0).empty() && !fragment(1).empty(); }

  // Holes of one fragment between the fracture and its innermost screw that are empty and could take that screw's
  // like, square to the plate through both cortices and clear of the fracture's edge; the nearest to it first.
  std::vector<int> usable_holes_inside(bool distal) const;
};

// Of values at a bound, which rounding must not push over it.
inline bool at_least(double value, double bound) { return value >= bound - 1e-9 * (1.0 + bound); }
inline bool at_most(double value, double bound) { return value <= bound + 1e-9 * (1.0 + bound); }

RuleFinding not_applicable(RuleFinding finding, Inapplicable reason);

// One rule: its name, and what it finds, but for the name.
struct Rule {
  std::string_view name;
  RuleFinding (*judge)(const RuleSubject& subject);
};

// By subject, each in its fixed order.
std::vector<Rule> treatment_rules();
std::vector<Rule> plate_rules();
std::vector<Rule> count_rules();
std::vector<Rule> hole_rules();
std::vector<Rule> distance_rules();
std::vector<Rule> angle_rules();
std::vector<Rule> order_rules();
const std::vector<Rule>& all_rules();

// By how much the plate's underside turns round a hole, from half-way to the hole or end before it to half-way to
// the one after it: what bends on both sides of the hole may leave in it. Positive as PlateBend::bend.
Angle turn_at_hole(const Plate& plate, const PlateShape& shape, int hole);
// Of the underside against the bone's axis there, rad; falls where the plate bends hollow side down.
double slope_angle(const PlateShape& shape, Length along);

// Angle between a locking screw's axis and square to the plate.
Angle tilt_of(const Screw& screw);

}  // namespace gapstrain::models
