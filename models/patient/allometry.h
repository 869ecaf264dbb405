// Sizes of a bone that nobody measured, from what was measured of it and the body mass: stand-ins, each with its
// spread, and what to measure in its place.
#pragma once

#include "models/patient/patient.h"

#include <optional>
#include <string>

namespace gapstrain::models {

// What stands behind a size that was not measured.
struct Guess {
  double spread = 0.0;  // either way, as a share of the size
  std::string source;
  std::string measure;  // a sentence: what to measure, on which view
};

struct BoneSize {
  Length value;
  std::optional<Guess> guess;  // absent: measured
};

// Of the whole bone and its mid-shaft. True lengths: corrected for magnification.
struct MeasuredBone {
  std::optional<Length> length, width_mediolateral, width_craniocaudal, cortex;
};

struct BoneSizes {
  BoneSize length, width_mediolateral, width_craniocaudal, cortex;
};

// Length 60 M^0.35 mm and mid-shaft diameter 4.6 M^0.36 mm of a dog's or cat's femur of M kg: exponents R. McN.
// Alexander et al. 1979, J. Zool. 189:305, of mammals from shrew to elephant; factors fitted to remembered sizes,
// within 15 %.
Length femur_length(Mass mass);
Length femur_diameter(Mass mass);

// What was measured stays; the rest follows from it as far as it can (a second width from the first, the cortex
// from the widths), else from the body mass: the femur's law times ratios of the bone to the femur, from memory.
// Breeds with short bent legs are not meant.
// @throw PatientError for a mass outside check_mass
BoneSizes complete_sizes(const Patient& patient, const MeasuredBone& measured);

}  // namespace gapstrain::models
