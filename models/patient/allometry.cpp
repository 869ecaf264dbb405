#include "models/patient/allometry.h"

#include <fmt/format.h>

#include <cmath>

namespace gapstrain::models {

namespace {

constexpr double femur_spread = 0.15;
constexpr double ratio_spread = 0.20;   // of a bone by its ratio to the femur; a choice of this program
constexpr double cortex_spread = 0.25;  // likewise
constexpr double shape_spread = 0.15;   // of one width from the other, likewise

// Lengths and widths over the femur's length and diameter.
struct Ratios {
  double length, width_mediolateral, width_craniocaudal;
  std::string_view source;
};

// The dog's from one of 30 kg: femur 195 to 215 mm long and 15 to 17 mm wide, tibia 200 to 220 and 13 to 15,
// radius 180 to 200 and 14 by 10, all from memory.
Ratios ratios(const Patient& patient) {
  constexpr std::string_view femur_source =
      "exponent Alexander et al. 1979, J Zool 189:305; factor fitted to remembered sizes of dogs and cats";
  constexpr std::string_view dog =
      "the femur's law (Alexander et al. 1979, J Zool 189:305) times the ratio to the femur "
      "in a dog of 30 kg, from memory";
  constexpr std::string_view other =
      "the femur's law (Alexander et al. 1979, J Zool 189:305) times a ratio to the femur from memory";
  const bool is_dog = patient.species == Species::dog;
  switch (patient.bone) {
    case LongBone::humerus:
      return is_dog ? Ratios{0.93, 0.95, 1.05, other} : Ratios{0.92, 0.85, 0.95, other};
    case LongBone::radius:
      return is_dog ? Ratios{190.0 / 205.0, 14.0 / 16.0, 10.0 / 16.0, dog} : Ratios{0.86, 0.75, 0.55, other};
    case LongBone::femur:
      return {1.0, 1.0, 1.0, femur_source};
    case LongBone::tibia:
      break;
  }
  return is_dog ? Ratios{210.0 / 205.0, 14.0 / 16.0, 14.0 / 16.0, dog} : Ratios{1.05, 0.85, 0.85, other};
}

// The wall over the mean width. The canal takes 0.5 to 0.6 of the outer width (from memory); the wide end, since a
// thin wall is the safe side. The femur's is thinner: 2 to 2.5 mm of 15 to 17 mm in a dog of 30 kg (from memory).
double cortex_share(LongBone bone) { return bone == LongBone::femur ? 2.25 / 16.0 : 0.5 * (1.0 - 0.6); }

constexpr std::string_view measure_length =
    "Measure it from joint surface to joint surface on the view that shows both joints, with a marker.";
constexpr std::string_view measure_mediolateral =
    "Measure the shaft's outer width at its middle on the craniocaudal view.";
constexpr std::string_view measure_craniocaudal =
    "Measure the shaft's outer width at its middle on the mediolateral view.";
constexpr std::string_view measure_cortex =
    "Measure both walls at the shaft's middle on the craniocaudal view and enter their mean.";

BoneSize width(const std::optional<Length>& measured, const std::optional<Length>& other, double over_other,
               const std::string& other_name, Length by_mass, double by_mass_spread, std::string_view source,
               std::string_view measure) {
  if (measured) return {*measured, std::nullopt};
  if (other)
    return {over_other * *other,
            Guess{shape_spread, fmt::format("{:.3g} times the {} width, from memory", over_other, other_name),
                  std::string(measure)}};
  return {by_mass, Guess{by_mass_spread, std::string(source), std::string(measure)}};
}

}  // namespace

Length femur_length(Mass mass) { return 60.0 * std::pow(mass.value(), 0.35) * mm; }
Length femur_diameter(Mass mass) { return 4.6 * std::pow(mass.value(), 0.36) * mm; }

BoneSizes complete_sizes(const Patient& patient, const MeasuredBone& measured) {
  check_mass(patient.species, patient.mass);
  const Ratios of_femur = ratios(patient);
  const double spread = patient.bone == LongBone::femur ? femur_spread : ratio_spread;
  const Length diameter = femur_diameter(patient.mass);
  const double flat = of_femur.width_craniocaudal / of_femur.width_mediolateral;

  BoneSizes sizes;
  sizes.length = measured.length
                     ? BoneSize{*measured.length, std::nullopt}
                     : BoneSize{of_femur.length * femur_length(patient.mass),
                                Guess{spread, std::string(of_femur.source), std::string(measure_length)}};
  sizes.width_mediolateral =
      width(measured.width_mediolateral, measured.width_craniocaudal, 1.0 / flat, "craniocaudal",
            of_femur.width_mediolateral * diameter, spread, of_femur.source, measure_mediolateral);
  sizes.width_craniocaudal =
      width(measured.width_craniocaudal, measured.width_mediolateral, flat, "mediolateral",
            of_femur.width_craniocaudal * diameter, spread, of_femur.source, measure_craniocaudal);
  const double share = cortex_share(patient.bone);
  const Length mean_width = 0.5 * (sizes.width_mediolateral.value + sizes.width_craniocaudal.value);
  sizes.cortex = measured.cortex
                     ? BoneSize{*measured.cortex, std::nullopt}
                     : BoneSize{share * mean_width,
                                Guess{cortex_spread, fmt::format("{:.3g} of the mean width, from memory", share),
                                      std::string(measure_cortex)}};
  return sizes;
}

}  // namespace gapstrain::models
