// What a limb's bone bears for each newton on its paw, with the evidence of each figure: forces by body weight,
// moments as lengths, which grow with the bone.
#pragma once

#include "models/parts/load_parts.h"
#include "models/patient/patient.h"

#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::models {

struct BoneSizes;

// The best that stands behind a figure, from the strongest to the weakest.
enum class LoadEvidence {
  read_in_full,  // measured, in a text read in full
  abstract,      // measured, as its abstract gives it
  cited,         // measured, as a text read in full cites it
  derived,       // by beam theory from strains or forces of the kinds above
  memory,        // from memory, alone or as what a derivation rests on
  none           // no source
};
std::string_view name_of(LoadEvidence evidence);  // "read in full"

// Nothing measured that could be looked up again.
inline bool is_weak(LoadEvidence evidence) {
  return evidence == LoadEvidence::memory || evidence == LoadEvidence::none;
}

struct LimbLoad {
  double low = 0.0, middle = 0.0, high = 0.0;
  LoadEvidence evidence = LoadEvidence::none;
  std::string source;  // a clause
};

// Where bending stretches the bone: a direction across the shaft, of length 1.
struct TensionSide {
  double lateral = 0.0, cranial = 0.0;
  std::string_view name;  // "cranial"
  LoadEvidence evidence = LoadEvidence::none;
  std::string_view source;
};

struct LimbLoads {
  Length reference_diameter;             // outer, of the shaft that the arms are of
  LimbLoad axial;                        // force along the bone over the force on the paw
  LimbLoad bending, torsion;             // mm at the reference diameter: the moment over the force on the paw
  TensionSide side;                      // taken
  std::vector<TensionSide> other_sides;  // that sources, or the lack of any, leave open
  const LimbLoad& part(LoadPart part) const;
};

// Of dogs; of cats the same arms over the diameter, and no source: no load or strain of a cat's bone was found.
LimbLoads limb_loads(Species species, LongBone bone);

// How many times as large all loads of a small patient may be for the same force on the paw: (27 kg / mass)^0.25,
// as muscles' leverage goes by weight to the power of 0.25 (Biewener 2005, J Exp Biol 208:1665, abstract) and the
// dogs that loads were measured on were some 27 kg (from memory). 1 where that is within a tenth, or less.
double more_muscle_force(Mass mass);

// The diameter that the arms go by: of the radius its craniocaudal width, else the mean of both widths.
Length diameter_for_loads(LongBone bone, const BoneSizes& sizes);

}  // namespace gapstrain::models
