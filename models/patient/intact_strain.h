// Strain of the intact bone under a load, without fracture or plate: what loads and sizes come to where living
// animals have been measured.
#pragma once

#include "models/geometry/bone_shape.h"
#include "models/parts/loading.h"

namespace gapstrain::models {

// Of a section's wall, an ellipse and the curve parallel to it: exact integrals over the wall.
struct TubeSection {
  double area = 0.0;                        // mm2
  double inertia_y = 0.0, inertia_z = 0.0;  // mm4, about the section's y and z axes
  double middle_area = 0.0;                 // mm2, inside the wall's middle line
  double middle_length = 0.0;               // mm, of that line
};
TubeSection tube_section(const BoneSection& section);

// Strains on the bone's outer surface, where they are largest, each the largest of the shaft.
struct IntactStrain {
  // At one place of it.
  struct Extreme {
    double principal = 0.0;     // positive: stretched
    double longitudinal = 0.0;  // likewise
    double shear = 0.0;         // engineering, of the shaft's axis and the direction round it; magnitude
    Angle to_shaft;             // from the shaft to the direction of `principal`, 0 to 90 degrees
    Length position;            // along the bone
    Angle around;               // round the bone from the plate's side towards +y
  };
  Extreme tension, compression;  // of the largest principal tension, of the largest principal compression
  double shear = 0.0;            // the largest, as above
};

// Section theory: N / EA + M c / EI of the load as the analysis applies it, bow and ball offsets included; torsion
// by Bredt's shear flow, corrected for the wall's thickness as in a round tube (exact there, and for thin walls);
// Mohr's circle of both. Transverse shear is left out: there is none between ball joints. Looked for on the shaft
// without a bone's width at either end, where sections do not stay plane.
// @pre the bone is checked, at least three widths long, and the load acts at its ends alone, between balls or on
// a cantilever, by no two points
IntactStrain intact_strain(const Bone& bone, Aspect plate_aspect, const LoadCase& load);

}  // namespace gapstrain::models
