// What a patient's limb does to its bones: loads of standing, walking and trotting, with the source of each.
#pragma once

#include "models/parts/bone.h"
#include "models/parts/loading.h"
#include "models/patient/limb_loads.h"

#include <array>
#include <string>
#include <vector>

namespace gapstrain::models {

inline constexpr double gravity = 9.81;  // N/kg

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

struct LoadBand {
  double low = 0.0, middle = 0.0, high = 0.0;
};

struct GaitLoad {
  Activity activity = Activity::standing;
  LoadCase load;                     // the middle of each part
  LoadBand axial;                    // N
  LoadBand bending, torsion;         // N mm
  std::vector<std::string> sources;  // of its parts, sentences
};

// One load for each activity, in their order: the parts of limb_loads.h at the middle of the peak vertical force,
// with arms in proportion to the bone's own diameter. Bending comes of the axial force's line, which passes the
// bone on the side that is compressed, whatever side the plate lies on. All activities have one shape: the
// direction of a bone's principal strains varies by at most 14 degrees over all speeds (Rubin & Lanyon 1982, J Exp
// Biol 101:187, abstract). All parts are taken to peak at once. A load's spread is that of the force on the paw,
// as if anywhere in its band; each part has a band of its own over the middle.
//
// Cycles a day, choices of this program. Walk: three walks on a leash of ten minutes at 1 m/s, 1800 m, at a stride
// of 0.6 m (of a dog of 5 kg, from memory; 1 m at 25 kg makes 1800), 3000. Standing up 100 times, 50 strides of
// trot that get away: no source. Forces are full from the first day: a limb's force was normal again on day 7
// after an approach to the shoulder (five dogs, VCOT, doi 10.1055/s-0038-1633089, abstract), and activity after
// stifle surgery no less at one month than before (Schuster et al. 2023, J Small Anim Pract 64:619, abstract).
// @throw PatientError for a mass outside check_mass
std::vector<GaitLoad> gait_loads(const Patient& patient, const BoneSizes& sizes, Aspect plate_aspect);

// The load with its bending as large, stretching another side.
LoadCase with_side(const LoadCase& load, const TensionSide& side, Aspect plate_aspect);

}  // namespace gapstrain::models
