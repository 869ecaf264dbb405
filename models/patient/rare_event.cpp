#include "models/patient/rare_event.h"

namespace gapstrain::models {

namespace {

// Thirteen military dogs landing on both forelimbs after an obstacle of 63 cm: 986.9 +/- 221.5 N (1175 N at 79 cm,
// 1366 N at 94 cm).
constexpr double on_both_paws = 986.9, dog_mass = 30.0;

}  // namespace

RareEvent landing(Species species, LongBone bone) {
  const PublishedRange trot = peak_vertical_force(Species::dog, LongBone::radius, Activity::trot);
  const double on_one_paw = 0.5 * on_both_paws / (dog_mass * gravity);
  RareEvent event{
      on_one_paw / trot.middle(), LoadEvidence::abstract,
      "987 N on both forelimbs of thirteen military dogs after an obstacle of 63 cm, Measurements of "
      "vertical ground reaction force in jumping dogs, Vet Comp Orthop Traumatol 1992, abstract; halved, "
      "over a mass of 30 kg, from memory"};
  if (species == Species::dog && is_in_forelimb(bone)) return event;
  event.evidence = LoadEvidence::none;
  event.source = "no source, likened to a dog's forelimb: " + event.source;
  return event;
}

std::optional<OnceBorne> borne_once(const std::vector<Margin>& margins, const RareEvent& event) {
  const Margin* const first = least_margin(margins, {MarginKind::plate_yield, MarginKind::screw_yield});
  if (first == nullptr) return std::nullopt;
  return OnceBorne{*first, event.over_trot};
}

}  // namespace gapstrain::models
