// What a patient's limb does to its bones: loads of standing, walking and trotting, with the source of each.
#pragma once

#include "models/parts/loading.h"
#include "models/patient/patient.h"

#include <array>
#include <string>
#include <vector>

namespace gapstrain::models {

enum class Activity { standing, walk, trot };
inline constexpr std::array activities{Activity::standing, Activity::walk, Activity::trot};
std::string_view name_of(Activity activity);  // "standing"

struct PublishedRange {
  double low = 0.0, high = 0.0;
  std::string source;
  double middle() const { return 0.5 * (low + high); }
};

// Vertical force on the paw at its peak over body weight, on one limb.
PublishedRange peak_vertical_force(Species species, LongBone bone, Activity activity);

struct GaitLoad {
  Activity activity = Activity::standing;
  LoadCase load;
  std::vector<std::string> sources;  // of its parts, sentences
};

// One load for each activity, in their order. All from the middle of published ranges, by design practice for long
// bones of dogs (from memory, rough): axial 1 to 1.5 times the peak vertical force; bending as if that force
// passed 5 to 15 mm beside the bone in a dog of 25 to 30 kg, scaled with the bone's diameter, on the side away
// from the plate (a plate lies on the tension side: common practice, no source); torsion 0.2 N m per kg at the
// trot, the low end of what is called an upper range, on the radius a quarter of it, in proportion to the force at
// other gaits. All parts are taken to peak at once. Cycles a day are those of a patient confined after plating.
// @throw PatientError for a mass outside check_mass
std::vector<GaitLoad> gait_loads(const Patient& patient);

// Largest principal strains of the radius and tibia measured in living animals at the trot and beyond.
const PublishedRange& published_trot_strain();

}  // namespace gapstrain::models
