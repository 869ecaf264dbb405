#include "models/plan/plan_notes.h"

#include "models/parts/words.h"
#include "models/rules/rules_subject.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace gapstrain::models {

namespace {

using Notes = std::vector<std::string>;

std::string name_of(const OrderedScrew& screw) {
  if (!screw.label.empty()) return screw.label;
  return screw.hole > 0 ? fmt::format("the screw in hole {}", screw.hole) : "the screw beside the plate";
}

bool any(const Plan& plan, ScrewKind kind) {
  return std::any_of(plan.screws.begin(), plan.screws.end(), [&](const auto& s) { return s.kind == kind; });
}

void note_bends(const Plan& plan, const Construct& construct, const PlateShape& shape, Notes& notes) {
  for (const auto& screw : plan.screws) {
    if (screw.kind != ScrewKind::locking || screw.hole == 0) continue;
    const double turn = std::abs(in_degrees(turn_at_hole(only(construct.plates), shape, screw.hole)));
    if (turn > in_degrees(largest_bend_at_locking_hole))
      notes.push_back(fmt::format("The plate bends by {:.1f} deg at hole {}: a locking head may not hold in it.",
                                  turn, screw.hole));
  }
  constexpr double least = 0.05;  // degrees: less is no bend
  if (std::any_of(plan.bends.begin(), plan.bends.end(),
                  [&](const PlateBend& bend) { return std::abs(in_degrees(bend.bend)) >= least; }))
    notes.push_back(
        "Bend between the holes, not at them, each place once: bending back and forth fatigues the metal.");
}

void note_prebend(const Plan& plan, Notes& notes) {
  if (!plan.prebend) return;
  notes.push_back(
      fmt::format("Prebend: after the plate fits the bone bend it once more by {:.1f} deg, {:.0f} mm from its "
                  "proximal end, so that it stands {:.3g} mm higher over the fracture than its bed.",
                  in_degrees(plan.prebend->bend), plan.prebend->at.value(), plan.prebend->height.value()));
}

std::string towards(Angle tilt, const std::string& one, const std::string& other) {
  return fmt::format("{:.3g} deg towards {}", std::abs(in_degrees(tilt)), tilt > Angle() ? one : other);
}

// Where the construct's +y lies; see bone_shape.h.
std::pair<std::string, std::string> sides(Aspect aspect) {
  switch (aspect) {
    case Aspect::cranial:
      return {"medial", "lateral"};
    case Aspect::caudal:
      return {"lateral", "medial"};
    case Aspect::lateral:
      return {"cranial", "caudal"};
    case Aspect::medial:
      break;
  }
  return {"caudal", "cranial"};
}

void note_screws(const Plan& plan, const Construct& construct, Notes& notes) {
  const auto [one, other] = sides(only(construct.plates).aspect);
  for (const auto& screw : plan.screws) {
    std::vector<std::string> ways;
    if (screw.tilt_along != Angle()) ways.push_back(towards(screw.tilt_along, "distal", "proximal"));
    if (screw.tilt_across != Angle())
      ways.push_back(screw.hole > 0
                         ? towards(screw.tilt_across, one, other)
                         : towards(screw.tilt_across, "rising angles", "falling angles") + " round the bone");
    if (!ways.empty())
      notes.push_back(fmt::format("{}: aim the tip {} from square{}.", name_of(screw), listed(ways),
                                  screw.tilt_across != Angle() && !plan.side
                                      ? " (of a left limb as of a right one, which it is the mirror image of)"
                                      : ""));
    if (screw.off_centre > Length())
      notes.push_back(fmt::format("{}: drill {:.3g} mm off the middle of the slot, away from the fracture.",
                                  name_of(screw), screw.off_centre.value()));
    if (screw.gliding)
      notes.push_back(
          fmt::format("{}: gliding hole of {:.3g} mm through the near cortex only, then the thread's drill "
                      "through the far one.",
                      name_of(screw), screw.gliding->value()));
    if (screw.cortices == 1)
      notes.push_back(fmt::format("{}: through one cortex; its tip is to end in the canal, so take no longer one.",
                                  name_of(screw)));
  }
}

// Free entries, as the construct gives them.
void note_entries(const Construct& construct, Notes& notes) {
  for (const Screw& screw : construct.screws)
    if (screw.entry)
      notes.push_back(fmt::format(
          "{}: enters {:.3g} mm from the bone's proximal end, {:.3g} deg round it from the plate's side towards "
          "{}.",
          screw.label.empty() ? "The screw beside the plate" : screw.label, screw.entry->position.value(),
          in_degrees(screw.entry->around), sides(only(construct.plates).aspect).first));
}

void note_order_list(const Plan& plan, Notes& notes) {
  std::vector<std::string> without_drill, other_metal;
  for (const auto& screw : plan.screws) {
    if (!screw.drill) without_drill.push_back(name_of(screw));
    if (screw.metal != plan.metal) other_metal.push_back(fmt::format("{} ({})", name_of(screw), screw.metal));
  }
  if (!without_drill.empty())
    notes.push_back(fmt::format("The drill for {} is the maker's to say: the size was entered by hand.",
                                listed(without_drill)));
  if (!other_metal.empty())
    notes.push_back(fmt::format("Plate and screws are of different metals: {} in a plate of {}.",
                                listed(other_metal), plan.metal));
}

}  // namespace

std::vector<std::string> plan_notes(const Plan& plan, const Construct& construct, const PlateShape& plate_shape) {
  Notes notes;
  if (construct.steps.empty())
    notes.push_back("The case gives no steps: the screws stand in the order in which they are listed.");
  note_bends(plan, construct, plate_shape, notes);
  note_prebend(plan, notes);
  note_entries(construct, notes);
  note_screws(plan, construct, notes);
  if (any(plan, ScrewKind::locking))
    notes.push_back(
        "Locking screws: drill through the guide that screws into the hole, or the head will not lock.");
  note_order_list(plan, notes);
  if (screw_lengths_rest_on(plan.estimated))
    notes.insert(notes.begin(),
                 "No screw length is offered to order: the bone's section or the implants are estimates. Measure "
                 "them, enter them and take them out of `estimated`.");
  notes.push_back(
      fmt::format("Lengths count from the plate's top face, beside the plate from the bone, along the screw; "
                  "through both cortices {:.3g} mm are added and the sum rounded up to {:.3g} mm steps. Measure "
                  "in the hole before choosing.",
                  construct.stock.screw_allowance.value(), construct.stock.screw_step.value()));
  return notes;
}

}  // namespace gapstrain::models
