#include "models/plan/plan_notes.h"

#include "models/rules/rules_subject.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace gapstrain::models {

namespace {

using Notes = std::vector<PlanNote>;

RulePart part_of(const OrderedScrew& screw) { return {screw.screw, screw.label, screw.hole}; }

bool any(const Plan& plan, ScrewKind kind) {
  return std::any_of(plan.screws.begin(), plan.screws.end(), [&](const auto& s) { return s.kind == kind; });
}

void note_bends(const Plan& plan, const Construct& construct, const PlateShape& shape, Notes& notes) {
  for (const auto& screw : plan.screws) {
    if (screw.kind != ScrewKind::locking || screw.hole == 0) continue;
    const Angle turn = turn_at_hole(only(construct.plates), shape, screw.hole);
    const Angle bend = turn < Angle() ? -turn : turn;
    if (bend > largest_bend_at_locking_hole) notes.emplace_back(BendAtLockingHole{screw.hole, bend});
  }
  constexpr double least = 0.05;  // degrees: less is no bend
  if (std::any_of(plan.bends.begin(), plan.bends.end(),
                  [&](const PlateBend& bend) { return std::abs(in_degrees(bend.bend)) >= least; }))
    notes.emplace_back(BendBetweenHoles{});
}

void note_screws(const Plan& plan, Notes& notes) {
  for (const auto& screw : plan.screws) {
    const RulePart part = part_of(screw);
    if (screw.tilt_along != Angle() || screw.tilt_across != Angle())
      notes.emplace_back(AimNote{part, screw.tilt_along, screw.tilt_across, plan.aspect, plan.side.has_value()});
    if (screw.off_centre > Length()) notes.emplace_back(OffCentreNote{part, screw.off_centre});
    if (screw.gliding) notes.emplace_back(GlidingHoleNote{part, *screw.gliding});
    if (screw.cortices == 1) notes.emplace_back(OneCortexNote{part});
  }
}

// Free entries, as the construct gives them.
void note_entries(const Construct& construct, Notes& notes) {
  for (const Screw& screw : construct.screws)
    if (screw.entry)
      notes.emplace_back(FreeEntryNote{{screw.id, screw.label, screw.hole},
                                       screw.entry->position,
                                       screw.entry->around,
                                       only(construct.plates).aspect});
}

void note_order_list(const Plan& plan, Notes& notes) {
  UnknownDrills unknown;
  OtherMetals others{{}, plan.metal};
  for (const auto& screw : plan.screws) {
    if (!screw.drill) unknown.screws.push_back(part_of(screw));
    if (screw.metal != plan.metal) others.screws.push_back({part_of(screw), screw.metal});
  }
  if (!unknown.screws.empty()) notes.emplace_back(std::move(unknown));
  if (!others.screws.empty()) notes.emplace_back(std::move(others));
}

}  // namespace

std::vector<PlanNote> plan_notes(const Plan& plan, const Construct& construct, const PlateShape& plate_shape) {
  Notes notes;
  if (screw_lengths_rest_on(plan.estimated)) notes.emplace_back(NoLengthToOrder{});
  if (construct.steps.empty()) notes.emplace_back(NoSteps{});
  note_bends(plan, construct, plate_shape, notes);
  if (plan.prebend) notes.emplace_back(*plan.prebend);
  note_entries(construct, notes);
  note_screws(plan, notes);
  if (any(plan, ScrewKind::locking)) notes.emplace_back(DrillGuideNote{});
  note_order_list(plan, notes);
  notes.emplace_back(LengthsNote{construct.stock.screw_allowance, construct.stock.screw_step});
  return notes;
}

}  // namespace gapstrain::models
