// Who is to be operated on, as far as loads and sizes depend on it.
#pragma once

#include "models/parts/units.h"

#include <stdexcept>
#include <string>
#include <string_view>

namespace gapstrain::models {

enum class Species { dog, cat };
enum class LongBone { humerus, radius, femur, tibia };

struct Patient {
  Species species = Species::dog;
  LongBone bone = LongBone::radius;
  Mass mass;
};

// What is asked about, so that a fault can be laid to the question that it answers.
enum class Subject { mass, marker, age, length, widths, fracture, treatment };

// What is said of the patient cannot be worked with. The sentence says what was found, what is allowed and what to
// measure instead.
struct PatientError : std::runtime_error {
  PatientError(Subject about, const std::string& sentence) : std::runtime_error(sentence), subject(about) {}
  Subject subject;
};

std::string_view name_of(Species species);  // "dog"
std::string_view name_of(LongBone bone);    // "radius"
inline bool is_in_forelimb(LongBone bone) { return bone == LongBone::humerus || bone == LongBone::radius; }

// Adults that the laws of allometry.h and gait.h were made from, and a little beyond: dogs of 1.5 to 80 kg, cats
// of 2 to 10 kg (from memory).
// @throw PatientError for another mass
void check_mass(Species species, Mass mass);

}  // namespace gapstrain::models
