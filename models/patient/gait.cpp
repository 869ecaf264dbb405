#include "models/patient/gait.h"

#include "models/geometry/anatomical_axes.h"
#include "models/patient/allometry.h"

#include <fmt/format.h>

#include <cmath>
#include <numbers>

namespace gapstrain::models {

namespace {

constexpr double trot_over_walk = 1.8;  // of the dog's shares below: 112.5 / 62.5 and 72.5 / 40

PublishedRange dog_share(bool fore, Activity activity) {
  const std::string split =
      "half of what the pair of limbs bears: 60.4 +/- 4.8 % of the weight in front, standing dogs, meeting "
      "abstract of Fish et al., whose paper of 552 dogs (2021, Anat Rec, doi 10.1002/ar.24407) gives 47.6 to "
      "74.4 %";
  const std::string memory = "from memory; larger dogs have less (Budsberg et al. 1987, Am J Vet Res 48:915)";
  switch (activity) {
    case Activity::standing:
      return fore ? PublishedRange{0.278, 0.326, split} : PublishedRange{0.174, 0.222, split};
    case Activity::walk:
      return fore ? PublishedRange{0.55, 0.70, memory} : PublishedRange{0.35, 0.45, memory};
    case Activity::trot:
      break;
  }
  return fore ? PublishedRange{1.00, 1.25, memory} : PublishedRange{0.65, 0.80, memory};
}

PublishedRange cat_share(bool fore, Activity activity) {
  std::string trot = "no source: the cat's share at a walk times the dog's ratio of trot to walk, 1.8";
  if (!fore)
    trot += "; the high side, for momentum with the paw down for 0.45 of the stride (from memory) gives 76 %";
  PublishedRange walk{fore ? 0.50 : 0.40, fore ? 0.60 : 0.50,
                      "from memory; fore above hind as in Stadig & Bergh 2015, J Feline Med Surg 17:523 (fore "
                      "over hind 1.3 +/- 0.2)"};
  switch (activity) {
    case Activity::standing:  // the fore pair bears r / (1 + r) of the weight at a ratio r of 1.1 to 1.5
      return {
          fore ? 0.262 : 0.200, fore ? 0.300 : 0.238,
          "half of what the pair of limbs bears when fore over hind is 1.3 +/- 0.2 as at a walk (Stadig & Bergh "
          "2015, J Feline Med Surg 17:523)"};
    case Activity::walk:
      return walk;
    case Activity::trot:
      break;
  }
  return {trot_over_walk * walk.low, trot_over_walk * walk.high, trot};
}

double cycles_per_day(Activity activity) {
  switch (activity) {
    case Activity::standing:
      return 100.0;
    case Activity::walk:
      return 3000.0;
    case Activity::trot:
      break;
  }
  return 50.0;
}

// Standard deviation, over the middle, of what lies anywhere between two bounds alike.
double variation(double low, double middle, double high) {
  return 0.5 * (high - low) / middle / std::numbers::sqrt3;
}

std::string cycles_reason(Activity activity) {
  switch (activity) {
    case Activity::standing:
      return "Cycles: 100 a day, of standing up and leaning (a choice of this program, no source).";
    case Activity::walk:
      return "Cycles: 3000 a day, three walks on a leash of ten minutes at 1 m/s at a stride of 0.6 m, a small "
             "dog's (a choice of this program; strides from memory, 1 m at 25 kg makes 1800; 2.3 hours of light "
             "activity were measured a day after stifle surgery, Schuster et al. 2023, J Small Anim Pract "
             "64:619, abstract, up to some 8000). Not spared after the first week: a limb's force was normal on "
             "day 7 after an approach to the shoulder (VCOT, doi 10.1055/s-0038-1633089, abstract).";
    case Activity::trot:
      break;
  }
  return "Cycles: 50 a day, strides that get away (a choice of this program, no source).";
}

LoadBand part_band(const LimbLoad& load, double times) {
  return {times * load.low, times * load.middle, times * load.high};
}

// The axial force's line for a moment that stretches the side: on the other one.
void bend_by_line(LoadCase& load, double moment, const AcrossShaft& tension) {
  const double arm = moment / load.axial_compression.value();
  load.ball_offset_y = -arm * tension.y * mm;
  load.ball_offset_z = -arm * tension.z * mm;
}

std::string side_reason(const TensionSide& side, const std::vector<TensionSide>& others) {
  std::string reason = fmt::format("the {} side in tension ({}", side.name, side.source);
  for (const TensionSide& other : others)
    if (!other.source.starts_with("no source")) reason += fmt::format("; {}: {}", other.name, other.source);
  return reason + ")";
}

std::vector<std::string> sources_of(const Patient& patient, const LimbLoads& limb, const GaitLoad& gait,
                                    const PublishedRange& share, double on_paw, double scale) {
  const auto in_nm = [](const LoadBand& moment) {
    return fmt::format("{:.2g} N m ({:.2g} to {:.2g})", moment.middle / 1000.0, moment.low / 1000.0,
                       moment.high / 1000.0);
  };
  return {
      fmt::format(
          "Peak vertical force {:.0f} to {:.0f} % of body weight on this limb, middle taken: {:.3g} N; {}.",
          100.0 * share.low, 100.0 * share.high, on_paw, share.source),
      fmt::format("Here: axial {:.3g} N ({:.3g} to {:.3g}), bending {}, torsion {}.", gait.axial.middle,
                  gait.axial.low, gait.axial.high, in_nm(gait.bending), in_nm(gait.torsion)),
      fmt::format("Axial: {:.3g} times that force, {:.3g} to {:.3g}; {}.", limb.axial.middle, limb.axial.low,
                  limb.axial.high, limb.axial.source),
      fmt::format("Bending: as if that force passed {:.2g} mm beside the bone, {:.2g} to {:.2g}, {}; {}.",
                  scale * limb.bending.middle, scale * limb.bending.low, scale * limb.bending.high,
                  side_reason(limb.side, limb.other_sides), limb.bending.source),
      fmt::format(
          "Torsion: that force at an arm of {:.2g} mm, {:.2g} to {:.2g}, in one sense, for no source tells "
          "which; {}.",
          scale * limb.torsion.middle, scale * limb.torsion.low, scale * limb.torsion.high, limb.torsion.source),
      fmt::format("Arms are those of a {} of {:.3g} mm, times {:.2g} for this one's diameter.",
                  name_of(patient.bone), limb.reference_diameter.value(), scale),
      cycles_reason(gait.activity),
      "Spread: that share lies anywhere in its band. The bands of the parts are over the middle taken."};
}

}  // namespace

std::string_view name_of(Activity activity) {
  switch (activity) {
    case Activity::standing:
      return "standing";
    case Activity::walk:
      return "walk";
    case Activity::trot:
      break;
  }
  return "trot";
}

PublishedRange peak_vertical_force(Species species, LongBone bone, Activity activity) {
  const bool fore = is_in_forelimb(bone);
  return species == Species::dog ? dog_share(fore, activity) : cat_share(fore, activity);
}

std::vector<GaitLoad> gait_loads(const Patient& patient, const BoneSizes& sizes, Aspect plate_aspect) {
  check_mass(patient.species, patient.mass);
  const LimbLoads limb = limb_loads(patient.species, patient.bone);
  const double weight = patient.mass.value() * gravity;
  const double scale = diameter_for_loads(patient.bone, sizes) / limb.reference_diameter;
  const AcrossShaft tension = in_construct(limb.side.lateral, limb.side.cranial, plate_aspect);

  std::vector<GaitLoad> loads;
  for (const Activity activity : activities) {
    const PublishedRange share = peak_vertical_force(patient.species, patient.bone, activity);
    const double on_paw = share.middle() * weight;
    GaitLoad gait;
    gait.activity = activity;
    gait.axial = part_band(limb.axial, on_paw);
    gait.bending = part_band(limb.bending, on_paw * scale);
    gait.torsion = part_band(limb.torsion, on_paw * scale);
    LoadCase& load = gait.load;
    load.name = name_of(activity);
    load.axial_compression = gait.axial.middle * newton;
    bend_by_line(load, gait.bending.middle, tension);
    load.torsion = gait.torsion.middle * newton_mm;
    load.cycles_per_day = cycles_per_day(activity);
    load.spread = variation(share.low, share.middle(), share.high);
    for (const LoadPart part : load_parts) {
      const LimbLoad& size = limb.part(part);
      band_of(load, part) = {size.low / size.middle, size.high / size.middle};
    }
    gait.sources = sources_of(patient, limb, gait, share, on_paw, scale);
    loads.push_back(std::move(gait));
  }
  return loads;
}

LoadCase with_side(const LoadCase& load, const TensionSide& side, Aspect plate_aspect) {
  LoadCase changed = load;
  const double arm = std::hypot(load.ball_offset_y.value(), load.ball_offset_z.value());
  bend_by_line(changed, arm * load.axial_compression.value(),
               in_construct(side.lateral, side.cranial, plate_aspect));
  return changed;
}

}  // namespace gapstrain::models
