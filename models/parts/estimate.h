// Sizes that a case has from an estimate, not from a measurement: what rests on them is not to be ordered by.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::models {

enum class Estimate {
  bone_length,
  width_mediolateral,
  width_craniocaudal,
  cortex,
  fracture_position,
  gap,
  implants,        // plate and screws of invented sizes
  weeks_to_union,  // the patient's age is not known
};

std::string_view key_of(Estimate estimate);   // "bone.length", as case files list it
std::string_view name_of(Estimate estimate);  // "bone length"

// Nothing for another key.
std::optional<Estimate> find_estimate(std::string_view key);
std::vector<std::string> estimate_keys();

// Whether the depth of a screw's hole rests on one of them: the bone's section, or a plate that is not the real
// one.
bool screw_lengths_rest_on(const std::vector<Estimate>& estimated);

}  // namespace gapstrain::models
