// What was measured on the bones of living dogs, and what the loads taken here make of an intact bone against it.
#pragma once

#include "models/patient/gait.h"
#include "models/patient/intact_strain.h"

#include <optional>
#include <string_view>
#include <vector>

namespace gapstrain::models {

enum class StrainKind {
  tension,           // largest principal strain
  compression,       // smallest, negative
  shear,             // engineering, of the shaft's axis
  tension_angle,     // of the principal tension to the shaft, where it is largest, degrees
  compression_angle  // likewise
};
std::string_view name_of(StrainKind kind);  // "tension"
inline bool is_angle(StrainKind kind) {
  return kind == StrainKind::tension_angle || kind == StrainKind::compression_angle;
}

struct MeasuredStrain {
  StrainKind kind = StrainKind::tension;
  Activity activity = Activity::walk;
  double low = 0.0, high = 0.0;
  std::optional<double> paw_force;  // over the weight, of the measurement; absent: that of the activity
  LoadEvidence evidence = LoadEvidence::none;
  std::string_view source;
};

// Empty: none was found. Of the humerus, and of all of a cat's bones.
std::vector<MeasuredStrain> measured_strains(Species species, LongBone bone);

enum class Against { below, inside, above };  // in size

struct StrainCheck {
  MeasuredStrain measured;
  double found = 0.0;  // strain, or degrees
  Against against() const;
};

// Of the middle loads of all activities. Strains grow with the load: where the force on the paw was measured as
// well, they are scaled to it. @pre as intact_strain
std::vector<StrainCheck> check_intact(const Patient& patient, const Bone& bone, Aspect plate_aspect,
                                      const std::vector<GaitLoad>& loads);

}  // namespace gapstrain::models
