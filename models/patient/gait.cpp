#include "models/patient/gait.h"

#include <fmt/format.h>

#include <cmath>
#include <numbers>

namespace gapstrain::models {

namespace {

constexpr double gravity = 9.81;  // N/kg

// Of design practice, from memory.
constexpr double axial_low = 1.0, axial_high = 1.5;     // over the peak vertical force
constexpr double offset_low = 5.0, offset_high = 15.0;  // mm, of the force from the bone
constexpr double offset_mass = 27.5;                    // kg, of the dog that these are of
constexpr double diameter_exponent = 0.36;              // Alexander et al. 1979, as in allometry.h
constexpr double trot_torsion = 0.2;                    // N m/kg
constexpr double radius_share_of_torsion = 0.25;

constexpr double trot_over_walk = 1.8;  // of the dog's shares below: 112.5 / 62.5 and 72.5 / 40

PublishedRange dog_share(bool fore, Activity activity) {
  const std::string split =
      "half of what the pair of limbs bears: 60.4 +/- 4.8 % of the weight in front, standing dogs, meeting "
      "abstract "
      "of Fish et al., whose paper of 552 dogs (2021, Anat Rec, doi 10.1002/ar.24407) gives 47.6 to 74.4 %";
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
  const std::string trot = "no source: the cat's share at a walk times the dog's ratio of trot to walk, 1.8";
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
      return 1000.0;
    case Activity::trot:
      break;
  }
  return 50.0;
}

// Standard deviation over the mean of what lies anywhere between two bounds alike.
double variation(double low, double high) { return (high - low) / (low + high) / std::numbers::sqrt3; }

std::string torsion_reason(const Patient& patient, Activity activity) {
  std::string reason =
      "Torsion: 0.2 N m per kg at the trot, the low end of an upper range of 0.2 to 0.4 (from memory)";
  if (patient.bone == LongBone::radius)
    reason +=
        "; a quarter of it, for the radius is bent rather than twisted (89 % of its strain in goats, Biewener & "
        "Taylor 1986, J Exp Biol 123:383; the quarter is a choice of this program)";
  else if (patient.bone == LongBone::tibia)
    reason +=
        "; the dog's tibia is twisted: its principal tension runs 30 to 60 degrees to the shaft (Bouvier & "
        "Hylander 1984, Acta Anat 118:187)";
  if (activity != Activity::trot) reason += "; at this gait in proportion to the force on the paw (no source)";
  return reason + ".";
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

std::vector<GaitLoad> gait_loads(const Patient& patient) {
  check_mass(patient.species, patient.mass);
  const double weight = patient.mass.value() * gravity;
  const double size = std::pow(patient.mass.value() / offset_mass, diameter_exponent);
  const double axial_factor = 0.5 * (axial_low + axial_high);
  const double offset = 0.5 * (offset_low + offset_high) * size;  // mm
  const double trot_share = peak_vertical_force(patient.species, patient.bone, Activity::trot).middle();
  const double torsion_per_mass = 1000.0 * trot_torsion *  // N mm/kg
                                  (patient.bone == LongBone::radius ? radius_share_of_torsion : 1.0);

  std::vector<GaitLoad> loads;
  for (const Activity activity : activities) {
    const PublishedRange share = peak_vertical_force(patient.species, patient.bone, activity);
    const double on_paw = share.middle() * weight;
    GaitLoad gait{activity, {}, {}};
    LoadCase& load = gait.load;
    load.name = name_of(activity);
    load.axial_compression = axial_factor * on_paw * newton;
    // The axial load at this offset bends as the force on the paw does at its own.
    load.ball_offset_z = -offset / axial_factor * mm;
    load.torsion = torsion_per_mass * patient.mass.value() * share.middle() / trot_share * newton_mm;
    load.cycles_per_day = cycles_per_day(activity);
    load.spread = std::hypot(variation(share.low, share.high), variation(offset_low, offset_high));
    gait.sources = {
        fmt::format(
            "Peak vertical force {:.0f} to {:.0f} % of body weight on this limb, middle taken: {:.3g} N; {}.",
            100.0 * share.low, 100.0 * share.high, on_paw, share.source),
        fmt::format("Axial: {:.3g} times that (1 to 1.5 in design practice, from memory).", axial_factor),
        fmt::format("Bending: as if it passed {:.2g} mm beside the bone (5 to 15 mm at 25 to 30 kg, from memory, "
                    "scaled with the bone's diameter), on the side away from the plate.",
                    offset),
        torsion_reason(patient, activity),
        fmt::format(
            "Cycles: {:.0f} a day, confined after plating (a choice of this program, no source; free dogs make "
            "2000 to 8000 a limb, from memory).",
            *load.cycles_per_day),
        "Spread: share and offset lie anywhere in their ranges."};
    loads.push_back(std::move(gait));
  }
  return loads;
}

const PublishedRange& published_trot_strain() {
  static const PublishedRange range{
      1000e-6, 3500e-6,
      "vigorous gaits of many species, mostly radius and tibia, from memory; their likeness: "
      "Rubin & Lanyon 1982, J Exp Biol 101:187"};
  return range;
}

}  // namespace gapstrain::models
