#include "models/words/plan_words.h"

#include "models/parts/words.h"
#include "models/words/rule_words.h"

#include <fmt/format.h>

#include <cmath>
#include <utility>

namespace gapstrain::models {

namespace {

// Where the construct's +y lies, and -y; see bone_shape.h.
std::pair<std::string, std::string> sides_of(Aspect aspect) {
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

std::string towards(Angle tilt, const std::string& one, const std::string& other) {
  return fmt::format("{:.3g} deg towards {}", std::abs(in_degrees(tilt)), tilt > Angle() ? one : other);
}

struct NoteSentence {
  std::string operator()(const NoLengthToOrder&) const {
    return "No screw length is offered to order: the bone's section or the implants are estimates. Measure them, "
           "enter them and take them out of `estimated`.";
  }
  std::string operator()(const NoSteps&) const {
    return "The case gives no steps: the screws stand in the order in which they are listed.";
  }
  std::string operator()(const BendAtLockingHole& note) const {
    return fmt::format("The plate bends by {:.1f} deg at hole {}: a locking head may not hold in it.",
                       in_degrees(note.bend), note.hole);
  }
  std::string operator()(const BendBetweenHoles&) const {
    return "Bend between the holes, not at them, each place once: bending back and forth fatigues the metal.";
  }
  std::string operator()(const PlannedPrebend& prebend) const {
    return fmt::format(
        "Prebend: after the plate fits the bone bend it once more by {:.1f} deg, {:.0f} mm from its proximal end, "
        "so that it stands {:.3g} mm higher over the fracture than its bed.",
        in_degrees(prebend.bend), prebend.at.value(), prebend.height.value());
  }
  std::string operator()(const FreeEntryNote& note) const {
    return fmt::format(
        "{}: enters {:.3g} mm from the bone's proximal end, {:.3g} deg round it from the plate's side towards {}.",
        note.screw.label.empty() ? "The screw beside the plate" : note.screw.label, note.position.value(),
        in_degrees(note.around), sides_of(note.aspect).first);
  }
  std::string operator()(const AimNote& note) const {
    const auto [one, other] = sides_of(note.aspect);
    std::vector<std::string> ways;
    if (note.along != Angle()) ways.push_back(towards(note.along, "distal", "proximal"));
    if (note.across != Angle())
      ways.push_back(note.screw.hole > 0
                         ? towards(note.across, one, other)
                         : towards(note.across, "rising angles", "falling angles") + " round the bone");
    return fmt::format("{}: aim the tip {} from square{}.", name_of(note.screw), listed(ways),
                       note.across != Angle() && !note.side_known
                           ? " (of a left limb as of a right one, which it is the mirror image of)"
                           : "");
  }
  std::string operator()(const OffCentreNote& note) const {
    return fmt::format("{}: drill {:.3g} mm off the middle of the slot, away from the fracture.",
                       name_of(note.screw), note.off_centre.value());
  }
  std::string operator()(const GlidingHoleNote& note) const {
    return fmt::format(
        "{}: gliding hole of {:.3g} mm through the near cortex only, then the thread's drill through the far one.",
        name_of(note.screw), note.diameter.value());
  }
  std::string operator()(const OneCortexNote& note) const {
    return fmt::format("{}: through one cortex; its tip is to end in the canal, so take no longer one.",
                       name_of(note.screw));
  }
  std::string operator()(const DrillGuideNote&) const {
    return "Locking screws: drill through the guide that screws into the hole, or the head will not lock.";
  }
  std::string operator()(const UnknownDrills& note) const {
    return fmt::format("The drill for {} is the maker's to say: the size was entered by hand.",
                       names_of(note.screws));
  }
  std::string operator()(const OtherMetals& note) const {
    std::vector<std::string> screws;
    for (const auto& one : note.screws) screws.push_back(fmt::format("{} ({})", name_of(one.screw), one.metal));
    return fmt::format("Plate and screws are of different metals: {} in a plate of {}.", listed(screws),
                       note.plate);
  }
  std::string operator()(const LengthsNote& note) const {
    return fmt::format(
        "Lengths count from the plate's top face, beside the plate from the bone, along the screw; through both "
        "cortices {:.3g} mm are added and the sum rounded up to {:.3g} mm steps. Measure in the hole before "
        "choosing.",
        note.allowance.value(), note.step.value());
  }
};

}  // namespace

std::string note_sentence(const PlanNote& note) { return std::visit(NoteSentence{}, note); }

std::vector<std::string> note_sentences(const std::vector<PlanNote>& notes) {
  std::vector<std::string> sentences;
  for (const auto& note : notes) sentences.push_back(note_sentence(note));
  return sentences;
}

}  // namespace gapstrain::models
