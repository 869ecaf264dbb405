// What is known of a patient becomes a case to begin from: sizes, fracture, plate, loads and healing, each either
// as given or as assumed.
#pragma once

#include "models/parts/estimate.h"
#include "models/patient/allometry.h"
#include "models/patient/gait.h"
#include "models/patient/starting_plate.h"
#include "models/patient/union_time.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

// All lengths are true ones: those measured on radiographs corrected for magnification.
struct DraftRequest {
  Patient patient;
  std::optional<double> age_in_months;
  MeasuredBone measured;              // without widths and cortex when there are stations
  std::vector<BoneStation> stations;  // by rising position; empty: a uniform shaft
  std::optional<double>
      magnification_spread;  // of the marker that all lengths were corrected by; absent: no marker
  std::optional<Length> fracture_position;
  std::optional<Length> gap;  // wanted between two fragments, measured of a comminuted zone
  Angle obliquity;
  FracturePattern pattern = FracturePattern::simple;
  Treatment treatment = Treatment::bridging;
};

struct Draft {
  DraftRequest request;
  BoneSizes sizes;  // rounded as they are written; of a bone with stations those of the middle one
  Bone bone;        // with the dog's cortex, for cats too
  Fracture fracture;
  StartingPlate plate;
  std::vector<GaitLoad> loads;
  UnionTime healing;  // of an adult when the age is not known
  std::vector<Estimate> estimated;
  std::vector<std::string> cautions;  // what the case does not know, and what rules had to give way
};

// A fracture without a position is taken in the bone's middle; without a gap as one of 0.5 mm when it is pressed,
// of 2 mm when a simple one is bridged (healing is poorer beyond: Claes et al. 1997, J Orthop Res 15:577).
// @throw PatientError for what no case can be made of
Draft make_draft(const DraftRequest& request);

// The draft with another plate for its bone and fracture, and the cautions that come of it.
Draft with_plate(Draft draft, StartingPlate plate);

}  // namespace gapstrain::models
