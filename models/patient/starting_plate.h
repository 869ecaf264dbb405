// A plate and its screws to begin from, by simple rules of the trade: a first guess that `review`, `analyse` and
// `layouts` are to better, not a plan. Implants are generic: invented sizes round those of bone screws.
#pragma once

#include "models/parts/bone.h"
#include "models/parts/fracture.h"
#include "models/parts/loading.h"
#include "models/parts/plate.h"
#include "models/parts/screw.h"
#include "models/patient/generic_plates.h"
#include "models/patient/patient.h"
#include "models/rules/rules.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

struct StartingPlate {
  Length width, thickness, pitch;
  Length middle_spacing;  // between the two middle holes
  Length hole_diameter;   // across the plate
  Length slot_length;     // equal to the diameter for round holes
  Length length, proximal_end, standoff;
  Aspect aspect = Aspect::cranial;
  int holes = 0;  // an even number

  Metal material;
  ScrewSize screw_size;
  Length prebend;                       // over the fracture, of a plate that presses
  Length slide;                         // of the compression screw
  ScrewKind kind = ScrewKind::locking;  // of all screws but the compression screw
  std::vector<int> proximal, distal;    // holes with a screw, from the fracture outward
  int compression_hole = 0;             // one of `distal`; 0: none

  std::vector<std::string> reasons;   // the rules, each with this plate's figure, as sentences
  std::vector<std::string> cautions;  // rules that the bone leaves no room for
};

// Of generic_plates.h: with its usual section or the stronger one.
struct PlateChoice {
  const GenericPlate* row = nullptr;
  bool strong = false;
  bool operator==(const PlateChoice&) const = default;
};

// Holes with a screw, from the fracture outward.
struct ScrewHoles {
  std::vector<int> proximal, distal;
};

// Where plates are put (common practice, no source). That is the side which bending stretches on the radius and,
// as far as is known, the femur; not on the tibia; of the humerus nobody knows.
Aspect usual_aspect(LongBone bone);

// The bone's width is the one at the fracture; an oblique cut is taken to reach furthest on the plate's side.
// `hardest` is what the plate is to bear while the fracture is open, the trot.
// @pre the fracture lies within the bone
// @throw PatientError when the bone is too narrow for the smallest screw, or leaves no room for two screws
// (bridging:
//        three) in a fragment, and for treatments other than bridging and compression
StartingPlate choose_plate(LongBone name, const Bone& bone, const Fracture& fracture, Treatment treatment,
                           const LoadCase& hardest);

// The same with a plate and holes of one's own; without holes the customary ones.
StartingPlate choose_plate(LongBone name, const Bone& bone, const Fracture& fracture, Treatment treatment,
                           const LoadCase& hardest, const PlateChoice& plate,
                           const std::optional<ScrewHoles>& holes = std::nullopt);

// Plates for bridging that the bone takes, by rising thread and section. From the one whose screws take just less
// than what is customary of the bone's width (25 to 30 %), for that weakens it least, to those that take most. No
// wider than the bone; without sections that nominal stress rules out, unless nothing is left of their thread.
// @throw PatientError as choose_plate
std::vector<PlateChoice> plates_to_try(LongBone name, const Bone& bone, const Fracture& fracture,
                                       const LoadCase& hardest);

}  // namespace gapstrain::models
