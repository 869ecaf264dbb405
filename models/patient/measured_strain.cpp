#include "models/patient/measured_strain.h"

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

constexpr std::string_view page_1993 =
    "dogs with a force plate, sides of the femur, Page et al. 1993, J Biomech 26:571, abstract; their gait, "
    "taken as a walk, and mass are not in it";
// Two standard errors either way: where the mean of the nine dogs lies in 95 of 100 such studies.
constexpr std::string_view yoshikawa_1994 =
    "mean of nine foxhounds within two standard errors, uphill at 5 km/h on the hind legs, Yoshikawa et al. "
    "1994, J Exp Biol 188:217, read in full";
constexpr double yoshikawa_force = 0.845;  // 0.82 to 0.87
constexpr std::string_view bouvier_1984 =
    "two dogs on a treadmill, gait and place of the gauge not in the abstract, Bouvier & Hylander 1984, Acta "
    "Anat 118:187";
constexpr std::string_view burr_1985 =
    "cranial side of the radius, gaits not separated, as Burr et al. 1985, J Biomech 18:189, read in full, "
    "cites Carter 1980, Rubin & Lanyon 1982 and Caler 1982";

constexpr double micro = 1e-6;

double measure_of(const IntactStrain& strain, StrainKind kind) {
  switch (kind) {
    case StrainKind::tension:
      return strain.tension.principal;
    case StrainKind::compression:
      return strain.compression.principal;
    case StrainKind::shear:
      return strain.shear;
    case StrainKind::tension_angle:
      return (strain.tension.to_shaft / degree).value();
    case StrainKind::compression_angle:
      break;
  }
  return (strain.compression.to_shaft / degree).value();
}

}  // namespace

std::string_view name_of(StrainKind kind) {
  switch (kind) {
    case StrainKind::tension:
      return "tension";
    case StrainKind::compression:
      return "compression";
    case StrainKind::shear:
      return "shear";
    case StrainKind::tension_angle:
      return "tension to shaft";
    case StrainKind::compression_angle:
      break;
  }
  return "compression to shaft";
}

std::vector<MeasuredStrain> measured_strains(Species species, LongBone bone) {
  if (species == Species::cat) return {};
  using enum StrainKind;
  switch (bone) {
    case LongBone::humerus:
      return {};
    case LongBone::radius:
      return {
          {tension, Activity::walk, 625.0 * micro, 1500.0 * micro, std::nullopt, LoadEvidence::cited, burr_1985},
          {tension, Activity::trot, 625.0 * micro, 1500.0 * micro, std::nullopt, LoadEvidence::cited, burr_1985}};
    case LongBone::femur:
      return {
          {tension, Activity::walk, 250.0 * micro, 458.0 * micro, std::nullopt, LoadEvidence::abstract, page_1993},
          {compression, Activity::walk, -502.0 * micro, -300.0 * micro, std::nullopt, LoadEvidence::abstract,
           page_1993},
          // "turned up to 29 degrees", of the side strained most
          {compression_angle, Activity::walk, 0.0, 29.0, std::nullopt, LoadEvidence::abstract, page_1993}};
    case LongBone::tibia:
      break;
  }
  const auto within = [](StrainKind kind, double mean, double error) {
    return MeasuredStrain{kind,
                          Activity::trot,
                          (mean - 2.0 * error) * micro,
                          (mean + 2.0 * error) * micro,
                          yoshikawa_force,
                          LoadEvidence::read_in_full,
                          yoshikawa_1994};
  };
  return {within(tension, 1200.0, 365.0),
          within(compression, -630.0, 210.0),
          within(shear, 1250.0, 350.0),
          {tension_angle, Activity::trot, 30.0, 60.0, std::nullopt, LoadEvidence::abstract, bouvier_1984}};
}

Against StrainCheck::against() const {
  const double one = std::abs(measured.low), other = std::abs(measured.high), size = std::abs(found);
  const double least = std::min(one, other), most = std::max(one, other);
  return size < least ? Against::below : size > most ? Against::above : Against::inside;
}

std::vector<StrainCheck> check_intact(const Patient& patient, const Bone& bone, Aspect plate_aspect,
                                      const std::vector<GaitLoad>& loads) {
  std::vector<StrainCheck> checks;
  for (const MeasuredStrain& measured : measured_strains(patient.species, patient.bone)) {
    const GaitLoad& gait = loads.at(static_cast<std::size_t>(measured.activity));
    const double found = measure_of(intact_strain(bone, plate_aspect, gait.load), measured.kind);
    const double own_force = peak_vertical_force(patient.species, patient.bone, measured.activity).middle();
    const bool scales = measured.paw_force && !is_angle(measured.kind);
    checks.push_back({measured, scales ? found * *measured.paw_force / own_force : found});
  }
  return checks;
}

}  // namespace gapstrain::models
