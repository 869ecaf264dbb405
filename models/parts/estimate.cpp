#include "models/parts/estimate.h"

#include <algorithm>
#include <array>

namespace gapstrain::models {

namespace {

struct Words {
  Estimate estimate;
  std::string_view key, name;
};

constexpr std::array all_words{
    Words{Estimate::bone_length, "bone.length", "bone length"},
    Words{Estimate::width_mediolateral, "bone.width_mediolateral", "mediolateral width"},
    Words{Estimate::width_craniocaudal, "bone.width_craniocaudal", "craniocaudal width"},
    Words{Estimate::cortex, "bone.cortex", "cortex"},
    Words{Estimate::fracture_position, "fracture.position", "place of the fracture"},
    Words{Estimate::gap, "fracture.gap", "gap"},
    Words{Estimate::implants, "plate", "plate and screws"},
    Words{Estimate::weeks_to_union, "healing", "time to union"},
};

const Words& words_of(Estimate estimate) {
  return *std::find_if(all_words.begin(), all_words.end(), [=](const Words& w) { return w.estimate == estimate; });
}

}  // namespace

std::string_view key_of(Estimate estimate) { return words_of(estimate).key; }

std::string_view name_of(Estimate estimate) { return words_of(estimate).name; }

std::optional<Estimate> find_estimate(std::string_view key) {
  const auto found =
      std::find_if(all_words.begin(), all_words.end(), [=](const Words& w) { return w.key == key; });
  return found == all_words.end() ? std::nullopt : std::optional(found->estimate);
}

std::vector<std::string> estimate_keys() {
  std::vector<std::string> keys;
  for (const auto& one : all_words) keys.emplace_back(one.key);
  return keys;
}

bool screw_lengths_rest_on(const std::vector<Estimate>& estimated) {
  return std::any_of(estimated.begin(), estimated.end(), [](Estimate estimate) {
    return estimate == Estimate::width_mediolateral || estimate == Estimate::width_craniocaudal ||
           estimate == Estimate::cortex || estimate == Estimate::implants;
  });
}

}  // namespace gapstrain::models
